import { checkInput } from '#operation';
import { type Issue, type Result, ok, refuse } from '#result';
import { type CareDraft, type CareOf, careDraftSchema, careDrafts, careIssues } from '#workshop';
import { figureReader, shownFigure } from '../action/terms/typed-figures.ts';
import { type ConditionForm, conditionFormOf, conditionOf } from '../shop/card-form.ts';

export const loadFigures = [['weightKg', '1'], ['peopleKg', '1'], ['legs', '1'], ['heaviestPct', '1'], ['areaM2', '1'], ['footMm', 'mm']] as const;
export const wayFigures = [['steps', '1'], ['narrowestMm', 'mm']] as const;
export const arrivalFigures = [['temperatureC', 'degC'], ['humidityPct', 'pct'], ['surfaceC', 'degC'], ['laterC', 'degC'], ['betweenHours', '1']] as const;

type Figure = (typeof loadFigures)[number][0] | (typeof wayFigures)[number][0];
type ArrivalFigure = (typeof arrivalFigures)[number][0];

export type MoveForm = Readonly<Record<'on' | 'fromPlace' | 'toPlace' | 'mover' | 'wrap' | 'remark' | Figure, string>> & {
  readonly status: CareOf<'move'>['status'];
  readonly storey: 'none' | NonNullable<CareOf<'move'>['storey']>;
  readonly arrival: Readonly<Record<ArrivalFigure, string>>;
  readonly before: ConditionForm;
  readonly after: ConditionForm;
};

type Move = Omit<CareOf<'move'>, 'id' | 'madeAt'>;

/** The form of a move that stands, or of a new one on a day, with what is usual. */
export function moveFormOf(move: Move | undefined, today: string, locale: string): MoveForm {
  const given: Move = move ?? careDrafts.move.parse({ kind: 'move', on: today });
  const figures = Object.fromEntries([...loadFigures, ...wayFigures].map(([name]) => [name, shownFigure(given[name], locale)])) as Readonly<Record<Figure, string>>;
  const arrival = Object.fromEntries(arrivalFigures.map(([name]) => [name, shownFigure(given.arrival?.[name], locale)])) as Readonly<Record<ArrivalFigure, string>>;
  const { on, fromPlace, toPlace, mover, wrap, remark, status, storey } = given;
  return { ...figures, on, fromPlace, toPlace, mover: mover ?? '', wrap, remark, status, storey: storey ?? 'none', arrival, before: conditionFormOf(given.before, locale), after: conditionFormOf(given.after, locale) };
}

const NEEDED: ReadonlySet<string> = new Set(['peopleKg', 'legs', 'heaviestPct']);

/** The move a form states, or which fields are wrong. An arrival nothing is stated of is none. */
export function moveOf(form: MoveForm, locale: string): Result<Extract<CareDraft, { kind: 'move' }>> {
  const reader = figureReader(locale);
  const figures = Object.fromEntries([...loadFigures, ...wayFigures].map(([name, unit]) => [name, reader.read(form[name], name, unit)]));
  const needed = [...NEEDED].filter((name) => form[name as Figure].trim() === '').map(need);
  const read = Object.fromEntries(arrivalFigures.map(([name, unit]) => [name, reader.read(form.arrival[name], `arrival.${name}`, unit)]));
  const isArrived = arrivalFigures.some(([name]) => form.arrival[name].trim() !== '');
  const lacking = isArrived ? (['temperatureC', 'humidityPct', 'surfaceC'] as const).filter((name) => form.arrival[name].trim() === '').map((name) => need(`arrival.${name}`)) : [];
  const [before, after] = [conditionOf(form.before, 'before', locale), conditionOf(form.after, 'after', locale)];
  const noDay = form.on === '' ? [need('on')] : [];
  const issues: readonly Issue[] = [...reader.issues, ...needed, ...lacking, ...noDay, ...(before.ok ? [] : before.issues), ...(after.ok ? [] : after.issues)];
  if (issues.length > 0) return refuse(...issues);
  const { on, fromPlace, toPlace, mover, wrap, remark, status, storey } = form;
  const draft = { kind: 'move', on, fromPlace, toPlace, wrap, remark, status, mover: mover === '' ? null : mover, storey: storey === 'none' ? null : storey, ...figures, arrival: isArrived ? read : null, before: before.ok ? before.value : null, after: after.ok ? after.value : null };
  const checked = checkInput(careDraftSchema, draft);
  if (!checked.ok) return checked;
  const wrong = careIssues(checked.value);
  return wrong.length > 0 ? refuse(...wrong) : ok(draft as Extract<CareDraft, { kind: 'move' }>);
}

function need(path: string): Issue {
  return { code: 'required', path, given: '', allowed: 'something stated' };
}
