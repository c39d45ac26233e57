import { type Result, map, ok, refuse } from '#result';
import { parseMeasure } from '#units';
import type { CardOf, ShopCardDraft } from '#workshop';
import { shownFigure } from '../action/terms/typed-figures.ts';
import { checkedCard, localMoment } from '../shop/card-form.ts';

type Hours = CardOf<'hours'>;

/** Hours as typed. `task`: jobs of the list, their ids parted by spaces. */
export interface HoursForm {
  readonly pianoId: string;
  readonly task: string;
  readonly line: string;
  readonly on: string;
  readonly hours: string;
  readonly stoppedAt: string;
  readonly words: string;
}

/** The form of an entry, or of a new one. */
export function hoursFormOf(entry: Hours | undefined, known: { readonly pianoId: string; readonly today: string }, locale: string): HoursForm {
  if (entry === undefined) return { pianoId: known.pianoId, task: '', line: '', on: known.today, hours: '', stoppedAt: '', words: '' };
  const { pianoId, jobs, line, on, hours, stoppedAt, details } = entry;
  return { pianoId, task: jobs.join(' '), line: line ?? '', on, hours: shownFigure(hours, locale), stoppedAt: stoppedAt === null ? '' : localMoment(stoppedAt), words: details?.words ?? '' };
}

/** Hours as a figure or as hours and minutes: `2.5`, `2,5`, `2:30`; an empty text is none. */
export function typedHours(typed: string, locale: string): Result<number | null> {
  const text = typed.trim();
  if (text === '') return ok(null);
  const clock = /^(\d{1,4}):([0-5]\d)$/u.exec(text);
  if (clock !== null) return ok(Number(clock[1]) + Number(clock[2]) / 60);
  return map(parseMeasure(text, { unit: '1', path: 'hours', locale }), ({ value }) => value);
}

/** The entry a form states, or which fields are wrong. What the clock said stays as it was, but for a stop that was corrected. */
export function hoursOfForm(form: HoursForm, { entry, cycle, who, locale }: { readonly entry: Hours | undefined; readonly cycle: number; readonly who: string | null; readonly locale: string }): Result<Extract<ShopCardDraft, { kind: 'hours' }>> {
  const hours = typedHours(form.hours, locale);
  if (!hours.ok) return hours;
  if (form.pianoId === '') return refuse({ code: 'required', path: 'pianoId', given: '', allowed: 'a piano' });
  const isStopAsShown = entry?.stoppedAt != null && localMoment(entry.stoppedAt) === form.stoppedAt;
  const stoppedAt = isStopAsShown ? entry.stoppedAt : form.stoppedAt === '' ? null : new Date(form.stoppedAt).toISOString();
  const draft = {
    kind: 'hours' as const, pianoId: form.pianoId, cycle, jobs: form.task === '' ? [] : form.task.split(' '), line: form.line === '' ? null : form.line, on: form.on, who: entry === undefined ? who : entry.who,
    hours: hours.value, startedAt: entry?.startedAt ?? null, stoppedAt, details: { words: form.words },
  };
  return map(checkedCard(draft), () => draft);
}
