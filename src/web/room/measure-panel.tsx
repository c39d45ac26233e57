import type { RoomConsequences, RoomMeasured, RoomRecord } from '#workshop';
import { useState } from 'react';
import { useDays, useFigures, useLocale, useSay } from '../language/use-say.ts';
import { IssueList } from '../shell/issue-list.tsx';
import { ProblemNote } from '../shell/problem-note.tsx';
import { Choice } from '../ui/choice.tsx';
import { Field } from '../ui/field.tsx';
import { Note } from '../ui/note.tsx';
import { type ThreadKind, useThread } from '../ui/use-thread.ts';
import { figureReader } from '../action/terms/typed-figures.ts';
import { PickSounds } from '../tone/recordings/pick-sounds.tsx';
import { losslessCopyOf } from '../tone/recordings/lossless-copy.ts';
import { sendSound, soundAddress } from '../tone/recordings/send-sound.ts';
import { dayHere } from '../ui/day-here.ts';
import '../tone/tone.css';
import { FitPanel } from './fit-panel.tsx';
import type { ImpulseAnswer, ImpulseNews, ImpulseOrder } from './impulse-jobs.ts';
import { MeasuredTable } from './measured-table.tsx';
import { useRoomWriting } from './use-rooms.ts';
import type { Issue } from '#result';

interface Known {
  readonly part: number;
  readonly answer?: ImpulseAnswer;
  readonly issues?: readonly Issue[];
}
const hearing: ThreadKind<ImpulseOrder, ImpulseNews, Known> = {
  make: () => new Worker(new URL('./impulse.worker.ts', import.meta.url), { type: 'module' }),
  nothing: { part: 0 },
  heard: (known, news) => (news.type === 'progress' ? { ...known, part: news.part } : news.type === 'heard' ? { part: 1, answer: news.answer } : { part: 1, issues: news.issues }),
};

const MOST_KEPT = 20;
const USUAL_SWEEP = { fromHz: '20', toHz: '20000', lengthS: '' };

/** Measures the room from a recording, keeps what was heard with it, lays it beside what is computed, and proposes surfaces that fit. */
export function MeasurePanel({ room, known, canWrite }: { readonly room: RoomRecord; readonly known: RoomConsequences; readonly canWrite: boolean }) {
  const say = useSay();
  const locale = useLocale();
  const figure = useFigures();
  const dayOf = useDays();
  const { state, start, end } = useThread(hearing);
  const writing = useRoomWriting();
  const [file, setFile] = useState<File>();
  const name = file?.name.slice(0, 255) ?? '';
  const [sending, send] = useState<'sending' | 'failed'>();
  const [done, setDone] = useState<File>();
  const [how, setHow] = useState<'impulse' | 'sweep'>('impulse');
  const [sweep, setSweep] = useState(USUAL_SWEEP);
  const [wrong, setWrong] = useState<readonly Issue[]>([]);
  const [unread, setUnread] = useState(false);
  const last = room.measured.at(-1);
  const { answer, issues, part } = state.known;
  const hear = async (picked: File): Promise<void> => {
    const told = how === 'sweep' ? sweepOf(sweep, locale) : { issues: [], sweep: undefined };
    setWrong(told.issues);
    setUnread(false);
    if (told.issues.length > 0) return;
    setFile(picked);
    send(undefined);
    try {
      start({ bytes: await ((await losslessCopyOf(picked)) ?? picked).arrayBuffer(), sweep: told.sweep });
    } catch {
      setUnread(true);
    }
  };
  const keep = async (heard: ImpulseAnswer, sound: File): Promise<void> => {
    send('sending');
    const kept = await sendSound(sound, { onProgress: () => undefined, signal: new AbortController().signal }).catch(() => undefined);
    send(kept === undefined ? 'failed' : undefined);
    if (kept === undefined) return;
    const measured: RoomMeasured = { ...heard, on: dayHere(), file: name, sound: kept.hash, sweep: state.order?.sweep ?? null };
    writing.mutate({ kind: 'change', id: room.id, draft: { measured: [...room.measured, measured] }, onKept: () => { setDone(sound); } });
  };
  return (
    <section className="panel" aria-labelledby="room-measure">
      <h3 id="room-measure">{say('room.measure')}</h3>
      <p>{say('room.measure.how')}</p>
      <Note tone="warn"><p>{say('room.measure.caution')}</p></Note>
      {canWrite && (
        <div className="no-print room-measure">
          <Choice label={say('room.measure.what')} value={how} options={(['impulse', 'sweep'] as const).map((value) => ({ value, label: say(`room.measure.${value}`) }))} onChange={setHow} />
          {how === 'sweep' && <div className="fields">{(['fromHz', 'toHz', 'lengthS'] as const).map((field) => <Field key={field} label={say(`room.sweep.${field}`)} value={sweep[field]} inputMode="decimal" onChange={(typed) => { setSweep((now) => ({ ...now, [field]: typed })); }} />)}</div>}
          {wrong.length > 0 && <div role="alert"><IssueList issues={wrong} /></div>}
          <PickSounds about={say('room.measure.pick')} isBusy={state.isRunning} onFiles={([picked]) => { if (picked !== undefined) void hear(picked); }} />
          {state.isRunning && <div className="row"><progress max={1} value={part} aria-label={say('room.measure')} /><span role="status">{say('room.measure.hearing', { name })}</span><button type="button" className="button" onClick={end}>{say('room.stop')}</button></div>}
          {(unread || state.hasFailed) && <p className="field-error" role="alert">{say('room.measure.unread')}</p>}
          {issues !== undefined && <div role="alert"><IssueList issues={issues} /></div>}
        </div>
      )}
      {answer !== undefined && !state.isRunning && file !== done && (
        <div className="room-heard">
          <h4>{say('room.measure.heard', { name, count: answer.impulseCount })}</h4>
          <MeasuredTable label={name} measured={{ ...answer, file: name, sweep: state.order?.sweep ?? null }} known={known} />
          {answer.t20S.some((time) => time !== null) || answer.edtS.some((time) => time !== null)
            ? <div className="row"><button type="button" className="button button-main" disabled={writing.isPending || sending === 'sending' || room.measured.length >= MOST_KEPT} onClick={() => { if (file !== undefined) void keep(answer, file); }}>{say('room.measure.keep')}</button></div>
            : <p>{say('room.measure.nothing')}</p>}
          {sending === 'failed' && <p className="field-error" role="alert">{say('shell.problem.noAnswer')}</p>}
          {room.measured.length === MOST_KEPT && <p className="soft small">{say('room.measure.full', { count: MOST_KEPT })}</p>}
        </div>
      )}
      {writing.error !== null && <ProblemNote problem={writing.error} />}
      {last !== undefined && (
        <>
          <h4>{say('room.measure.kept', { on: dayOf(last.on), name: last.file, count: last.impulseCount })}</h4>
          {last.sound !== null && <p className="no-print"><a href={soundAddress(last.sound)}>{say('room.measure.listen')}</a></p>}
          <MeasuredTable label={say('room.measured')} measured={last} known={known} />
          {room.measured.length > 1 && <p className="soft small">{say('room.measure.earlier', { files: room.measured.slice(0, -1).map(({ on, file: of }) => `${dayOf(on)}, ${of}`).join('; ') })}</p>}
          <FitPanel room={room} known={known} measured={last} canWrite={canWrite} figure={figure} />
        </>
      )}
    </section>
  );
}

function sweepOf(typed: typeof USUAL_SWEEP, locale: string): { readonly issues: readonly Issue[]; readonly sweep: ImpulseOrder['sweep'] } {
  const reader = figureReader(locale);
  const read = (name: keyof typeof USUAL_SWEEP, unit: 'Hz' | 's', [min, max]: readonly [number, number]): number => {
    const value = reader.read(typed[name], name, unit) ?? Number.NaN;
    return value >= min && value <= max ? value : Number.NaN;
  };
  const sweep = { fromHz: read('fromHz', 'Hz', [1, 100_000]), toHz: read('toHz', 'Hz', [1, 100_000]), lengthS: read('lengthS', 's', [0.5, 120]) };
  const wrong = Object.entries(sweep).flatMap(([path, value]): readonly Issue[] => (Number.isNaN(value) && !reader.issues.some((issue) => issue.path === path) ? [{ code: 'range', path, given: typed[path as 'toHz'], allowed: path === 'lengthS' ? '0.5 to 120 s' : '1 to 100000 Hz', params: path === 'lengthS' ? { min: 0.5, max: 120, unit: 's' } : { min: 1, max: 100_000, unit: 'Hz' } }] : []));
  const order: readonly Issue[] = sweep.toHz <= sweep.fromHz ? [{ code: 'order', path: 'toHz', given: sweep.toHz, allowed: `above ${String(sweep.fromHz)} Hz`, params: { above: sweep.fromHz } }] : [];
  return { issues: [...reader.issues, ...wrong, ...order], sweep };
}
