import { type TuningPass, type TuningPassDraft, tuningPassDraftSchema } from '#instrument';
import { checkInput } from '#operation';
import { type Issue, type Result, ok } from '#result';
import { figureReader, shownFigure } from '../../action/terms/typed-figures.ts';

/** A pass as typed; an empty text is not stated. */
export interface PassForm {
  readonly day: string;
  readonly time: string;
  readonly stretch: TuningPass['stretch'];
  readonly foundCt: string;
  readonly leftCt: string;
  readonly temperatureC: string;
  readonly humidityPct: string;
  readonly remark: string;
}

export const passFigures = [['foundCt', 'ct'], ['leftCt', 'ct'], ['temperatureC', 'degC'], ['humidityPct', 'pct']] as const;

/** A new pass, on the day given. */
export const emptyPass = (day: string): PassForm => ({ day, time: '', stretch: 'whole', foundCt: '', leftCt: '', temperatureC: '', humidityPct: '', remark: '' });

/** The form that shows a pass. */
export function passFormOf({ day, time, stretch, remark, ...figures }: TuningPass, locale: string): PassForm {
  const shown = (name: (typeof passFigures)[number][0]): string => shownFigure(figures[name], locale);
  return { day, time: time ?? '', stretch, foundCt: shown('foundCt'), leftCt: shown('leftCt'), temperatureC: shown('temperatureC'), humidityPct: shown('humidityPct'), remark };
}

/** The pass a form states, or which fields are wrong. */
export function passOf({ day, time, stretch, remark, ...typed }: PassForm, cycle: number, locale: string): Result<TuningPassDraft> {
  const reader = figureReader(locale);
  const [foundCt, leftCt, temperatureC, humidityPct] = passFigures.map(([name, unit]) => reader.read(typed[name], name, unit));
  const missing: readonly Issue[] = typed.foundCt.trim() === '' ? [{ code: 'required', path: 'foundCt', given: typed.foundCt, allowed: 'a pitch in cents', params: { kind: 'number' } }] : [];
  const noDay: readonly Issue[] = day === '' ? [{ code: 'required', path: 'day', given: day, allowed: 'a day', params: { reason: 'day' } }] : [];
  const issues = [...reader.issues, ...missing, ...noDay];
  if (issues.length > 0) return { ok: false, issues };
  const clock = time.trim().replace('.', ':').replace(/^(\d):/u, '0$1:');
  const draft: TuningPassDraft = { cycle, day, time: clock === '' ? null : clock, stretch, foundCt: foundCt ?? 0, leftCt: leftCt ?? null, temperatureC: temperatureC ?? null, humidityPct: humidityPct ?? null, remark };
  const checked = checkInput(tuningPassDraftSchema, draft);
  return checked.ok ? ok(draft) : checked;
}
