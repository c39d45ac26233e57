import type { State, WeighingSession } from '#instrument';
import type { Issue } from '#result';
import { type UnitId, parseMeasure } from '#units';
import type { Body } from '#workshop';

/** A figure of the session form: what unit it is kept in and what is allowed. */
export interface SessionFigure {
  readonly name: 'placeOnKeyMm' | 'stepG' | 'repeatabilityG' | 'temperatureC' | 'humidityPct';
  readonly unit: UnitId;
  readonly min: number;
  readonly max: number;
  /** True where the lower bound itself is not allowed. */
  readonly above?: true;
}

export const sessionFigures: readonly SessionFigure[] = [
  { name: 'placeOnKeyMm', unit: 'mm', min: 0, max: 100 },
  { name: 'stepG', unit: 'g', min: 0, max: 50, above: true },
  { name: 'repeatabilityG', unit: 'g', min: 0, max: 50 },
  { name: 'temperatureC', unit: 'degC', min: -20, max: 60 },
  { name: 'humidityPct', unit: 'pct', min: 0, max: 100 },
];

/** Choices of the session form, each with its words; what is not chosen is not stated. */
export const sessionChoices = {
  rule: ['firstMovesLastLifts', 'interpolated'],
  dampers: ['lifted', 'resting', 'none'],
  helperSprings: ['none', 'engaged', 'unhooked'],
  regulated: ['yes', 'no'],
} as const;
export type SessionChoiceName = keyof typeof sessionChoices;

type TextName = SessionFigure['name'] | 'weighedOn' | 'weightClass' | 'equipment' | 'remark' | 'repeats';

/** The session form as typed; empty means not stated. */
export type SessionForm = Readonly<Record<TextName | SessionChoiceName, string>>;

const EMPTY: SessionForm = {
  weighedOn: '',
  placeOnKeyMm: '', stepG: '', repeatabilityG: '', temperatureC: '', humidityPct: '', weightClass: '', equipment: '', remark: '', repeats: '1',
  rule: '', dampers: '', helperSprings: '', regulated: '',
};

/** The form of a session that stands, or an empty one. */
export function formOf(session: WeighingSession | null, number: (value: number) => string): SessionForm {
  if (session === null) return EMPTY;
  const figures = sessionFigures.map(({ name }) => [name, session[name] === null ? '' : number(session[name])]);
  return {
    ...EMPTY,
    ...(Object.fromEntries(figures) as Pick<SessionForm, SessionFigure['name']>),
    weighedOn: session.weighedOn ?? '',
    weightClass: session.weightClass ?? '',
    equipment: session.equipment ?? '',
    remark: session.remark,
    repeats: String(session.repeats),
    rule: session.rule ?? '',
    dampers: session.dampers ?? '',
    helperSprings: session.helperSprings ?? '',
    regulated: session.regulated === null ? '' : session.regulated ? 'yes' : 'no',
  };
}

type Draft = Body<'addSession'>;
export type DraftResult = { readonly ok: true; readonly draft: Draft } | { readonly ok: false; readonly issues: Readonly<Partial<Record<TextName, Issue>>> };

/** The session as it is kept, or what is wrong field by field. */
export function draftOf(form: SessionForm, { cycle, state, locale }: { readonly cycle: number; readonly state: State; readonly locale: string }): DraftResult {
  const issues: Partial<Record<TextName, Issue>> = {};
  const figure = ({ name, unit, min, max, above }: SessionFigure): number | null => {
    if (form[name].trim() === '') return null;
    const read = parseMeasure(form[name], { unit, path: name, locale });
    if (!read.ok) {
      issues[name] = read.issues[0] ?? { code: 'format', path: name, given: form[name], allowed: 'a number' };
      return null;
    }
    const { value } = read.value;
    if (value > max || value < min || (above === true && value === min)) {
      issues[name] = { code: 'range', path: name, given: form[name], allowed: `${String(min)} to ${String(max)}`, params: { min, max } };
    }
    return value;
  };
  const figures = Object.fromEntries(sessionFigures.map((field) => [field.name, figure(field)])) as Record<SessionFigure['name'], number | null>;
  const repeats = Number(form.repeats.trim() || '1');
  if (!Number.isInteger(repeats) || repeats < 1 || repeats > 10) {
    issues.repeats = { code: 'range', path: 'repeats', given: form.repeats, allowed: '1 to 10', params: { min: 1, max: 10 } };
  }
  if (Object.keys(issues).length > 0) return { ok: false, issues };
  const text = (name: 'weightClass' | 'equipment'): string | null => form[name].trim() || null;
  return {
    ok: true,
    draft: {
      cycle, state, repeats, ...figures,
      weighedOn: form.weighedOn || null,
      weightClass: text('weightClass'),
      equipment: text('equipment'),
      remark: form.remark.trim(),
      rule: chosen(form, 'rule'),
      dampers: chosen(form, 'dampers'),
      helperSprings: chosen(form, 'helperSprings'),
      regulated: form.regulated === '' ? null : form.regulated === 'yes',
    },
  };
}

function chosen<N extends SessionChoiceName>(form: SessionForm, name: N): (typeof sessionChoices)[N][number] | null {
  return sessionChoices[name].find((choice) => choice === form[name]) ?? null;
}
