import { type BenchPiano, type CardOf, type ShopCardDraft, benchTasksOf, hoursOfEntry } from '#workshop';
import { TakenUp } from '../kept/taken-up.tsx';
import { useFigures, useLocale, useMoments, useSay } from '../language/use-say.ts';
import { useAtTheBench } from '../people/at-the-bench.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { cardChangeOf } from '../shop/card-form.ts';
import { cardsOfKind } from '../shop/shop-queries.ts';
import { addCard, changeCard } from '../shop/shop-writing.ts';
import { useDialogForm } from '../terms/use-dialog-form.ts';
import { AppDialog } from '../ui/app-dialog.tsx';
import { DayField } from '../ui/day-field.tsx';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';
import { type BenchBook, lineOfJobs } from './bench-queries.ts';
import { dayHere } from '../ui/day-here.ts';
import { type HoursForm, hoursFormOf, hoursOfForm } from './hours-form.ts';
import { type JobNames, useJobNames } from './job-names.ts';

type HoursDraft = Extract<ShopCardDraft, { kind: 'hours' }>;

interface HoursDialogProps {
  readonly bench: BenchBook;
  /** The entry that is corrected; none for a new one. */
  readonly entry?: CardOf<'hours'> | undefined;
  readonly onClose: () => void;
}

/** Hours noted afterwards, or an entry of the clock corrected. */
export function HoursDialog({ bench, entry, onClose }: HoursDialogProps) {
  const say = useSay();
  const locale = useLocale();
  const figure = useFigures();
  const moment = useMoments();
  const who = useAtTheBench();
  const names = useJobNames(bench);
  const { book, pianos } = bench;
  const pianoOf = ({ pianoId }: HoursForm): BenchPiano | undefined => pianos.find(({ instrument }) => instrument.id === pianoId);
  const { form, draft, errorOf, problem, isBusy, submit } = useDialogForm<HoursForm, HoursDraft, unknown>({
    name: `bench.hours.${entry?.id ?? 'new'}`,
    base: () => hoursFormOf(entry, { pianoId: pianos[0]?.instrument.id ?? '', today: dayHere() }, locale),
    stated: (now) => hoursOfForm(now, { entry, cycle: entry?.cycle ?? pianoOf(now)?.instrument.cycle ?? 1, who, locale }),
    keep: (wanted) => (entry === undefined ? addCard(wanted) : changeCard(entry.id, cardChangeOf(entry, wanted))),
    onKept: onClose,
  });
  const { typed, change } = draft;
  const piano = pianoOf(typed);
  const set = (part: Partial<HoursForm>): void => { change((now) => ({ ...now, ...part })); };
  const byClock = entry === undefined ? undefined : hoursOfEntry({ ...entry, hours: null });
  const lines = piano?.estimate?.lines.filter(({ kind }) => kind === 'labour') ?? [];
  return (
    <AppDialog title={say('bench.hours.title')} isOpen onClose={onClose}>
      <form ref={form} className="card-form" onSubmit={submit} noValidate>
        {draft.isTakenUp && <TakenUp />}
        {entry === undefined ? <SelectField label={say('shop.field.pianoId')} value={typed.pianoId} error={errorOf('pianoId')} options={pianos.map(({ instrument: { id, name } }) => ({ value: id, label: name }))} onChange={(pianoId) => { set({ pianoId, task: '', line: '' }); }} /> : <p>{book.pianos.get(entry.pianoId)}</p>}
        <SelectField label={say('bench.hours.task')} value={typed.task} options={tasksOf(piano, typed.task, names, say('bench.hours.noTask'))} onChange={(task) => { set({ task, line: lineOfJobs(task.split(' '), cardsOfKind(book.cards, 'hours')) ?? typed.line }); }} />
        {lines.length > 0 && <SelectField label={say('bench.hours.line')} value={typed.line} options={[{ value: '', label: say('bench.hours.noLine') }, ...lines.map(({ id, words }) => ({ value: id, label: words }))]} onChange={(line) => { set({ line }); }} />}
        <DayField label={say('bench.hours.on')} value={typed.on} hint={say('shop.hint.dayNeeded')} error={errorOf('on')} onChange={(on) => { set({ on }); }} />
        {entry?.startedAt != null && (
          <>
            <p className="soft">{say('bench.hours.startedAt')}: {moment(entry.startedAt)}</p>
            <DayField label={say('bench.hours.stoppedAt')} hasClock hint={say('shop.hint.startsAt')} value={typed.stoppedAt} error={errorOf('stoppedAt')} onChange={(stoppedAt) => { set({ stoppedAt }); }} />
          </>
        )}
        <Field label={say('bench.hours.hours')} value={typed.hours} inputMode="text" hint={byClock === undefined ? say('bench.hours.hoursHint') : say('bench.hours.hoursOver', { hours: figure(byClock, 2) })} error={errorOf('hours')} onChange={(hours) => { set({ hours }); }} />
        <Field label={say('shop.field.details.words')} value={typed.words} maxLength={4000} onChange={(words) => { set({ words }); }} />
        {problem !== undefined && <ProblemNote problem={problem} />}
        <div className="dialog-foot">
          <button type="button" className="button" onClick={() => { draft.drop(); onClose(); }}>{say('shell.cancel')}</button>
          <button type="submit" className="button button-main" disabled={isBusy}>{say('shell.save')}</button>
        </div>
      </form>
    </AppDialog>
  );
}

/** Jobs of a piano hours can be noted for: like ones together, and those the entry names already. */
function tasksOf(piano: BenchPiano | undefined, standing: string, names: JobNames, whole: string): readonly { readonly value: string; readonly label: string }[] {
  const tasks = piano === undefined ? [] : benchTasksOf([piano], new Date(), new Map()).map(({ items }) => ({ value: items.slice(0, 128).map(({ id }) => id).join(' '), label: `${names.jobs(items)} · ${names.keys(piano, items)}` }));
  const isKnown = standing === '' || tasks.some(({ value }) => value === standing);
  const named = piano === undefined || isKnown ? [] : [{ value: standing, label: names.target({ pianoId: piano.instrument.id, jobs: standing.split(' '), line: null }) }];
  return [{ value: '', label: whole }, ...named, ...tasks];
}
