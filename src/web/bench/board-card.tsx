import { type BenchColumn, type BenchTask, type CardOf, hoursOfEntry } from '#workshop';
import { Link } from '@tanstack/react-router';
import type { KeyboardEvent } from 'react';
import { useFigures, useSay } from '../language/use-say.ts';
import { useAtTheBench } from '../people/at-the-bench.ts';
import { cardsOfKind } from '../shop/shop-queries.ts';
import { type BenchBook, lineOfJobs } from './bench-queries.ts';
import { sendSteps, turnSteps, useClockSteps } from './clock-keeper.ts';
import { runningClockOf, withStart } from './clock-steps.ts';
import { useJobNames } from './job-names.ts';
import { WaitTold } from './wait-told.tsx';

interface BoardCardProps {
  readonly task: BenchTask;
  readonly bench: BenchBook;
  readonly orders: ReadonlyMap<string, CardOf<'purchase'>>;
  readonly onMove: (task: BenchTask, column: BenchColumn) => void;
  readonly onTake: () => void;
}

/** Where a card is moved from a column, back and on. */
const beside: Readonly<Record<BenchColumn, { readonly before?: BenchColumn; readonly after?: BenchColumn }>> = {
  toDo: { after: 'inHand' },
  inHand: { before: 'toDo', after: 'done' },
  waits: { before: 'toDo', after: 'inHand' },
  done: { before: 'inHand' },
};

/** Like jobs of one piano: what, where, what they wait for, the hours noted; moved, timed and supplied from here. */
export function BoardCard({ task, bench, orders, onMove, onTake }: BoardCardProps) {
  const say = useSay();
  const figure = useFigures();
  const names = useJobNames(bench);
  const steps = useClockSteps();
  const who = useAtTheBench();
  const { piano, items, column, stage, wait } = task;
  const { instrument } = piano;
  const what = `${names.jobs(items)}, ${instrument.name}`;
  const ids = items.map(({ id }) => id);
  const entries = cardsOfKind(bench.book.cards, 'hours').filter(({ jobs }) => jobs.some((job) => ids.includes(job)));
  const noted = entries.reduce((sum, entry) => sum + (hoursOfEntry(entry) ?? 0), 0);
  const running = runningClockOf(steps, bench.book.cards, who);
  const isRunningHere = running?.jobs.some((job) => ids.includes(job)) === true;
  const start = (): void => {
    const target = { pianoId: instrument.id, cycle: instrument.cycle, jobs: ids.slice(0, 128), line: lineOfJobs(ids, entries), who, startedAt: new Date().toISOString() };
    turnSteps((standing) => withStart(standing, running, target));
    void sendSteps();
  };
  const { before, after } = beside[column];
  const byKey = (event: KeyboardEvent): void => {
    const to = event.key === 'ArrowLeft' ? before : event.key === 'ArrowRight' ? after : undefined;
    if (to === undefined) return;
    event.preventDefault();
    onMove(task, to);
  };
  const mover = (to: BenchColumn | undefined, how: 'back' | 'on', sign: string) => (to === undefined ? null : (
    <button type="button" className="button board-move" aria-label={say(`bench.card.${how}`, { column: say(`bench.column.${to}`), what })} onClick={() => { onMove(task, to); }} onKeyDown={byKey}>
      <span aria-hidden="true">{sign}</span> {say('bench.column.name', { column: to })}
    </button>
  ));
  return (
    <li className="board-card" data-jobs={ids.join(' ')}>
      <p className="soft small">{say(`stage.${String(stage) as '1'}`)}</p>
      <p><strong>{names.jobs(items)}</strong></p>
      <p><Link to="/pianos/$pianoId/work" params={{ pianoId: instrument.id }} aria-label={say('bench.card.go', { piano: instrument.name })}>{instrument.name}</Link></p>
      <p className="soft small">{[names.keys(piano, items), ...(noted > 0 ? [say('bench.card.noted', { hours: figure(noted, 2) })] : [])].join(' · ')}</p>
      {wait !== null && <WaitTold wait={wait} isOver={column !== 'waits'} orders={orders} />}
      <div className="board-moves">
        {mover(before, 'back', '←')}{mover(after, 'on', '→')}
        {column !== 'done' && <button type="button" className="button" aria-label={say('bench.card.waitOf', { what })} onClick={() => { onMove(task, 'waits'); }}>{say('bench.card.wait')}</button>}
      </div>
      {column !== 'done' && (
        <div className="board-moves">
          {!isRunningHere && <button type="button" className="button" aria-label={say('bench.clock.startOf', { what })} onClick={start}>{say('bench.clock.start')}</button>}
          {isRunningHere && <span className="board-runs">{say('bench.hours.runs')}</span>}
          <button type="button" className="button button-quiet" aria-label={say('bench.card.takeOf', { what })} onClick={onTake}>{say('bench.card.take')}</button>
        </div>
      )}
    </li>
  );
}
