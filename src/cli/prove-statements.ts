import { type Compass, type SessionDraft, type TouchIntent, compass88, daySchema, instrumentDraftSchema, keyOfNote, midiOf, sessionDraftSchema, touchIntentSchema } from '#instrument';
import { checkInput } from '#operation';
import type { ProofInstrument } from '#proof';
import { type Issue, type Result, ok, refuse } from '#result';
import { type UnitId, parseMeasure } from '#units';
import { z } from 'zod';
import { optionOf } from './prove-options.ts';

/** What may be stated beside two tables, as typed. */
export type TypedStatements = Readonly<Partial<Record<
  | 'even' | 'targetG' | 'toleranceG' | 'upWeightMinG'
  | 'found' | 'finished' | 'foundOn' | 'finishedOn'
  | 'stepG' | 'repeatabilityG' | 'rule' | 'dampers' | 'helperSprings' | 'regulated' | 'weightClass' | 'equipment' | 'placeOnKeyMm' | 'temperatureC' | 'humidityPct'
  | 'name' | 'kind' | 'firstNote' | 'lastNote' | 'maker' | 'serial' | 'year' | 'lengthMm', string>>> & { readonly demo?: boolean | undefined };

/** What was stated, understood. What was not stays null. */
export interface Statements {
  readonly intent: TouchIntent | null;
  readonly session: Omit<SessionDraft, 'cycle' | 'state' | 'weighedOn'>;
  /** The day each table was weighed on. */
  readonly weighedOn: Readonly<Record<'found' | 'finished', string | null>>;
  readonly instrument: ProofInstrument;
}

const SESSION_FIGURES = { stepG: 'g', repeatabilityG: 'g', placeOnKeyMm: 'mm', temperatureC: 'degC', humidityPct: 'pct' } as const satisfies Readonly<Record<string, UnitId>>;
const INTENT_FIGURES = { targetG: 'g', toleranceG: 'g', upWeightMinG: 'g' } as const satisfies Readonly<Record<string, UnitId>>;
const INSTRUMENT_FIGURES = { year: '1', lengthMm: 'mm' } as const satisfies Readonly<Record<string, UnitId>>;
const ANY_COMPASS: Compass = { firstMidi: 0, lastMidi: 127 };

/** Understands everything stated on the command line, or names every option that cannot be. */
export function understandStatements(typed: TypedStatements, locale: string): Result<Statements> {
  const intent = understandIntent(typed, locale);
  const session = understandSession(typed, locale);
  const instrument = understandInstrument(typed, locale);
  const days = understandDays(typed);
  if (intent.ok && session.ok && instrument.ok && days.ok) return ok({ intent: intent.value, session: session.value, instrument: instrument.value, weighedOn: days.value });
  return { ok: false, issues: [intent, session, instrument, days].flatMap((result) => (result.ok ? [] : result.issues)) };
}

/** Figures as typed: `49,5` and `49.5` alike. */
function figuresOf<F extends Exclude<keyof TypedStatements, 'demo'>>(typed: TypedStatements, units: Readonly<Record<F, UnitId>>, locale: string): Result<Readonly<Partial<Record<F, number>>>> {
  const figures: Partial<Record<F, number>> = {};
  const issues: Issue[] = [];
  for (const field of Object.keys(units) as F[]) {
    const text = typed[field];
    if (text === undefined) continue;
    const parsed = parseMeasure(text, { unit: units[field], path: optionOf(field), locale });
    if (parsed.ok) figures[field] = parsed.value.value;
    else issues.push(...parsed.issues);
  }
  return issues.length === 0 ? ok(figures) : { ok: false, issues };
}

/** The same issues under the names of the options. */
function underOptions<T>(result: Result<T>): Result<T> {
  return result.ok ? result : { ok: false, issues: result.issues.map((issue) => ({ ...issue, path: optionOf(issue.path) })) };
}

function understandIntent(typed: TypedStatements, locale: string): Result<TouchIntent | null> {
  const { even = 'downWeight', targetG, toleranceG } = typed;
  const leaning = ([['toleranceG', toleranceG], ['upWeightMinG', typed.upWeightMinG], ['even', typed.even]] as const).find(([, text]) => text !== undefined);
  if (targetG === undefined) {
    return leaning === undefined ? ok(null) : refuse({ code: 'required', path: '--target-g', given: '', allowed: `a target in grams, since ${optionOf(leaning[0])} is given` });
  }
  if (toleranceG === undefined) return refuse({ code: 'required', path: '--tolerance-g', given: '', allowed: 'a tolerance in grams, since --target-g is given' });
  const figures = figuresOf(typed, INTENT_FIGURES, locale);
  return figures.ok ? underOptions(checkInput(touchIntentSchema, { even, upWeightMinG: 0, ...figures.value })) : figures;
}

function understandSession(typed: TypedStatements, locale: string): Result<Statements['session']> {
  const figures = figuresOf(typed, SESSION_FIGURES, locale);
  if (!figures.ok) return figures;
  const { rule = null, dampers = null, helperSprings = null, regulated, weightClass = null, equipment = null } = typed;
  return underOptions(checkInput(sessionDraftSchema.omit({ cycle: true, state: true, weighedOn: true }), {
    ...figures.value, rule, dampers, helperSprings, weightClass, equipment, regulated: regulated === undefined ? null : regulated === 'yes',
  }));
}

/** The days of weighing, each beside the table it is told of. */
function understandDays(typed: TypedStatements): Result<Statements['weighedOn']> {
  const lone = (['found', 'finished'] as const).find((state) => typed[`${state}On`] !== undefined && typed[state] === undefined);
  if (lone !== undefined) return refuse({ code: 'required', path: `--${lone}`, given: '', allowed: `a table, since --${lone}-on is given` });
  const { foundOn = null, finishedOn = null } = typed;
  const days = underOptions(checkInput(z.object({ foundOn: daySchema.nullable(), finishedOn: daySchema.nullable() }), { foundOn, finishedOn }));
  return days.ok ? ok({ found: days.value.foundOn, finished: days.value.finishedOn }) : days;
}

function understandInstrument(typed: TypedStatements, locale: string): Result<ProofInstrument> {
  const figures = figuresOf(typed, INSTRUMENT_FIGURES, locale);
  const compass = understandCompass(typed);
  if (!figures.ok || !compass.ok) return { ok: false, issues: [figures, compass].flatMap((result) => (result.ok ? [] : result.issues)) };
  const { name = '', maker = null, serial = null, demo = false, kind } = typed;
  const { year = null, lengthMm = null } = figures.value;
  const checked = checkInput(instrumentDraftSchema, { name: name.trim() === '' ? '-' : name, kind: kind ?? 'grand', maker, serial, year, lengthMm, ...compass.value });
  if (!checked.ok) return underOptions(checked);
  return ok({
    name: name.trim(), kind: kind === undefined ? null : checked.value.kind, maker, serial, year, lengthMm, demo, ...compass.value,
    compassAssumed: typed.firstNote === undefined || typed.lastNote === undefined,
  });
}

/** The keys from the lowest to the highest note; 88 keys where a note was not stated. */
function understandCompass({ firstNote, lastNote }: TypedStatements): Result<Compass> {
  const midiOfNote = (path: string, note: string | undefined, assumed: number): Result<number> => {
    if (note === undefined) return ok(assumed);
    const key = keyOfNote(ANY_COMPASS, note);
    return key === undefined ? refuse({ code: 'format', path, given: note, allowed: 'a note such as A0, C8 or F#7' }) : ok(midiOf(ANY_COMPASS, key));
  };
  const first = midiOfNote('--first-note', firstNote, compass88.firstMidi);
  const last = midiOfNote('--last-note', lastNote, compass88.lastMidi);
  if (!first.ok || !last.ok) return { ok: false, issues: [first, last].flatMap((result) => (result.ok ? [] : result.issues)) };
  if (last.value - first.value < 11) return refuse({ code: 'order', path: '--last-note', given: lastNote ?? 'C8', allowed: 'at least an octave above the lowest note' });
  return ok({ firstMidi: first.value, lastMidi: last.value });
}
