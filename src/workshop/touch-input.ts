import { type KeyFigures, type LeverArms, type Measured, type TouchInput, weighingUncertaintyOf } from '#action';
import { type Instrument, type KeyNumber, type Outcome, type QuantityName, type Reading, type State, type TouchIntent, type WeighingSession, compassOf, quantityOf } from '#instrument';
import { meanOf, standardDeviationOf } from '#numerics';
import { grams } from '#units';

/** What counts of a weighing session here. */
type Weighing = Omit<WeighingSession, 'startedAt'>;

/** What the touch of one state of an instrument is read from. */
export interface TouchMaterial {
  readonly instrument: Pick<Instrument, 'kind' | 'firstMidi' | 'lastMidi'>;
  readonly sessions: readonly Weighing[];
  /** Standing readings; those of other cycles and states are passed over. */
  readonly readings: readonly Reading[];
  readonly cycle: number;
  readonly state: State;
  readonly intent: TouchIntent | null;
}

/** Outcomes from the least to the worst: of several at one key the worst is told. */
const WORSE: readonly Outcome[] = ['unweighable', 'overRange', 'noReturn', 'sticks', 'missing'];

/** Weights the touch is judged by: only an outcome of these puts a key outside. */
const JUDGED: ReadonlySet<string> = new Set(['downWeightG', 'upWeightG']);

/**
 * Gathers standing readings into what the analysis takes: per key the mean of the repeats with its standard uncertainty,
 * the worst outcome, and the lever arms by colour.
 *
 * u² = q²/12 + s²/n, step q and repeatability s as its session states them; where the repeats scatter more than s, their own
 * scatter. A reading's own uncertainty goes before its session's. Nothing is assumed: without step and repeatability no
 * uncertainty, without step and rule no correction of friction. Step and rule hold for everything weighed in a session, so loose
 * parts on a finer scale belong to a session of their own.
 * @source JCGM-100
 */
export function touchInputOf({ instrument, sessions, readings, cycle, state, intent }: TouchMaterial): TouchInput {
  const standing = readings.filter((reading) => reading.cycle === cycle && reading.state === state && quantityOf(reading.quantity).part === 'touch');
  const sessionOf = new Map(sessions.map((session) => [session.id, session]));
  const keys = [...groupBy(standing.filter(({ scope }) => scope === 'key'), ({ index }) => index)]
    .sort(([a], [b]) => a - b)
    .map(([key, ofKey]) => keyFiguresOf(key, ofKey, sessionOf));
  const weighing = sessionsOfTouch(standing, sessionOf);
  return {
    kind: instrument.kind,
    compass: compassOf(instrument),
    keys,
    arms: { natural: armsOf(standing, 0), sharp: armsOf(standing, 1) },
    ...agreed('stepG', weighing, ({ stepG }) => stepG),
    ...agreed('rule', weighing, ({ rule }) => rule),
    ...agreed('dampers', weighing, ({ dampers }) => dampers),
    ...agreed('helperSprings', weighing, ({ helperSprings }) => helperSprings),
    intent,
  };
}

type Sessions = ReadonlyMap<string, Weighing>;

function keyFiguresOf(key: KeyNumber, readings: readonly Reading[], sessions: Sessions): KeyFigures {
  const figures: Partial<Record<QuantityName, Measured>> = {};
  for (const [quantity, ofQuantity] of groupBy(readings, ({ quantity }) => quantity)) {
    const measured = measuredOf(ofQuantity, sessions);
    if (measured !== undefined) figures[quantity] = measured;
  }
  const outcomes = readings.flatMap(({ quantity, outcome }) => (outcome !== null && JUDGED.has(quantity) ? [outcome] : []));
  const worst = outcomes.reduce<Outcome | undefined>((sofar, each) => (sofar === undefined || WORSE.indexOf(each) > WORSE.indexOf(sofar) ? each : sofar), undefined);
  const bias = frictionBiasOf(readings, sessions);
  return { key, ...figures, ...(bias === undefined ? {} : { frictionBiasG: bias }), ...(worst === undefined ? {} : { outcome: worst }) };
}

/** Mean of the repeats that gave a number, with what is known of its doubt. */
function measuredOf(readings: readonly Reading[], sessions: Sessions): Measured | undefined {
  const numbers = readings.flatMap((reading) => (reading.value === null ? [] : [{ ...reading, value: reading.value }]));
  if (numbers.length === 0) return undefined;
  const values = numbers.map(({ value }) => value);
  const uncertainty = ownUncertaintyOf(numbers) ?? sessionUncertaintyOf(numbers, values, sessions);
  return { value: grams(meanOf(values)), count: values.length, ...(uncertainty === undefined ? {} : { standardUncertaintyG: grams(uncertainty) }) };
}

/** Standard uncertainty of the mean when every reading carries its own. */
function ownUncertaintyOf(readings: readonly Reading[]): number | undefined {
  const known = readings.flatMap(({ uncertainty }) => uncertainty ?? []);
  return known.length < readings.length ? undefined : Math.hypot(...known) / readings.length;
}

function sessionUncertaintyOf(readings: readonly Reading[], values: readonly number[], sessions: Sessions): number | undefined {
  const stated = readings.map(({ sessionId }) => (sessionId === null ? undefined : sessions.get(sessionId)));
  const steps = stated.flatMap((session) => session?.stepG ?? []);
  const repeatabilities = stated.flatMap((session) => session?.repeatabilityG ?? []);
  const known = stated.every((session) => session !== undefined && (session.stepG !== null || session.repeatabilityG !== null));
  if (!known) return undefined;
  return weighingUncertaintyOf({
    stepG: grams(Math.max(0, ...steps)),
    repeatabilityG: grams(Math.max(standardDeviationOf(values), ...repeatabilities)),
    repeats: values.length,
  });
}

/** Half the mean step of down and up weight where the rule is first moves, last lifts; 0 where read between steps; else unknown. @source OWN */
function frictionBiasOf(readings: readonly Reading[], sessions: Sessions): number | undefined {
  const biases = readings.filter(({ quantity, value }) => JUDGED.has(quantity) && value !== null).map(({ sessionId }) => {
    const session = sessionId === null ? undefined : sessions.get(sessionId);
    if (session?.rule === 'interpolated') return 0;
    return session?.rule === 'firstMovesLastLifts' && session.stepG !== null ? session.stepG / 2 : undefined;
  });
  const known = biases.filter((bias) => bias !== undefined);
  return known.length === 0 || known.length < biases.length ? undefined : meanOf(known);
}

/** Sessions that down and up weights were read in; undefined stands for readings without one. */
function sessionsOfTouch(readings: readonly Reading[], sessions: Sessions): readonly (Weighing | undefined)[] {
  const ids = new Set(readings.filter(({ quantity }) => JUDGED.has(quantity)).map(({ sessionId }) => sessionId));
  return [...ids].map((id) => (id === null ? undefined : sessions.get(id)));
}

/** A field that all sessions state alike; absent when one does not state it or two differ. */
function agreed<K extends string, V>(name: K, sessions: readonly (Weighing | undefined)[], pick: (session: Weighing) => V | null): Partial<Record<K, V>> {
  const values = sessions.map((session) => (session === undefined ? null : pick(session)));
  const [first, ...rest] = values;
  if (first === undefined || first === null || rest.some((value) => value !== first)) return {};
  return { [name]: first } as Record<K, V>;
}

const ARMS = ['keyFrontMm', 'keyBackMm', 'wippenHeelMm', 'wippenJackMm', 'rollerMm', 'hammerMm'] as const satisfies readonly (QuantityName & keyof LeverArms)[];

/** Lever arms of one colour: naturals 0, sharps 1; repeats averaged. */
function armsOf(readings: readonly Reading[], index: 0 | 1): LeverArms {
  const arms: Partial<Record<keyof LeverArms, number>> = {};
  for (const arm of ARMS) {
    const values = readings.flatMap(({ quantity, scope, index: at, value }) => (quantity === arm && scope === 'colour' && at === index && value !== null ? [value] : []));
    if (values.length > 0) arms[arm] = meanOf(values);
  }
  return arms;
}

function groupBy<T, K>(list: readonly T[], keyOf: (item: T) => K): ReadonlyMap<K, readonly T[]> {
  const groups = new Map<K, T[]>();
  for (const item of list) {
    const group = groups.get(keyOf(item));
    if (group === undefined) groups.set(keyOf(item), [item]);
    else group.push(item);
  }
  return groups;
}
