import { FORGOTTEN_AFTER_H, mayBeForgotten } from '#workshop';
import { useEffect } from 'react';
import { useAtTheBench } from '../people/at-the-bench.ts';
import { useMoments, useSay } from '../language/use-say.ts';
import { Note } from '../ui/note.tsx';
import type { BenchBook } from './bench-queries.ts';
import { sendSteps, turnSteps, useClockSteps } from './clock-keeper.ts';
import { type ClockStep, runningClockOf, withStop } from './clock-steps.ts';
import { useJobNames } from './job-names.ts';
import { useNow } from './use-now.ts';

/** The clock that runs, with what it runs for; steps that wait to be sent; one that the book refused. */
export function ClockPanel({ bench }: { readonly bench: BenchBook }) {
  const say = useSay();
  const moment = useMoments();
  const steps = useClockSteps();
  const who = useAtTheBench();
  const now = useNow(15);
  const names = useJobNames(bench);
  useEffect(() => {
    const send = (): void => { void sendSteps(); };
    send();
    window.addEventListener('online', send);
    const timer = setInterval(send, 20_000);
    return () => { window.removeEventListener('online', send); clearInterval(timer); };
  }, []);
  const running = runningClockOf(steps, bench.book.cards, who);
  const stop = (): void => {
    if (running === undefined) return;
    turnSteps((standing) => withStop(standing, running, new Date().toISOString()));
    void sendSteps();
  };
  const waiting = steps.filter(({ refused }) => refused === undefined).length;
  const minutes = running === undefined ? 0 : Math.max(0, Math.floor((now.getTime() - Date.parse(running.startedAt)) / 60_000));
  return (
    <section className="panel bench-clock" aria-labelledby="bench-clock">
      <h2 id="bench-clock">{say('bench.clock')}</h2>
      {running === undefined ? <p className="soft">{say('bench.clock.none')}</p> : (
        <div className="row row-between">
          <div>
            <p><strong>{names.target(running)}</strong></p>
            <p className="soft">{say('bench.clock.running', { moment: moment(running.startedAt) })}</p>
          </div>
          <p className="bench-elapsed" role="timer">{say('bench.clock.elapsed', { hours: Math.floor(minutes / 60), minutes: minutes % 60 })}</p>
          <button type="button" className="button button-main" onClick={stop}>{say('bench.clock.stop')}</button>
        </div>
      )}
      {running !== undefined && mayBeForgotten({ hours: null, startedAt: running.startedAt, stoppedAt: null }, now) && <Note tone="warn"><p>{say('bench.clock.forgotten', { hours: FORGOTTEN_AFTER_H })}</p></Note>}
      {waiting > 0 && <p className="soft" role="status">{say('bench.clock.waiting', { count: waiting })}</p>}
      {steps.map((step) => (step.refused === undefined ? null : <Refused key={`${step.kind} ${momentOf(step)}`} step={step} bench={bench} />))}
    </section>
  );
}

/** A step the book did not take: told with its moment, so that it can be noted by hand, and left out only on purpose. */
function Refused({ step, bench }: { readonly step: ClockStep; readonly bench: BenchBook }) {
  const say = useSay();
  const moment = useMoments();
  const names = useJobNames(bench);
  const what = step.kind === 'stop' ? say('bench.clock.stop') : `${say('bench.clock.start')}: ${names.target(step)}`;
  return (
    <Note tone="bad">
      <p>{say('bench.clock.refused', { what, moment: moment(momentOf(step)), why: step.refused ?? '' })}</p>
      <button type="button" className="button" onClick={() => { turnSteps((standing) => standing.filter((one) => momentOf(one) !== momentOf(step) || one.kind !== step.kind)); }}>{say('bench.clock.drop')}</button>
    </Note>
  );
}

function momentOf(step: ClockStep): string {
  return step.kind === 'start' ? step.startedAt : step.stoppedAt;
}
