import type { KeyTouch, LeverArms, TouchAnalysis } from '#action';
import type { QuantityName, Reading, TouchIntent } from '#instrument';
import type { FigureStory, Origin } from '../figure/figure-store.ts';
import { ROW_ORIGINS, TARGET_ORIGINS, keyOriginsOf, readingsAt } from './origins.ts';

/** Readings and parts of a key, by the names the operations know them by. */
const PARTS = ['downWeightG', 'upWeightG', 'frontWeightG', 'hammerWeightG', 'wippenWeightG'] as const satisfies readonly QuantityName[];

const ARMS = ['keyFrontMm', 'keyBackMm', 'wippenHeelMm', 'wippenJackMm', 'rollerMm', 'hammerMm'] as const satisfies readonly (QuantityName & keyof LeverArms)[];

/** What stands behind the derived figures of one key. */
export interface Behind {
  readonly touch: KeyTouch;
  /** Standing readings of the state: a list, since every figure opened goes through them anew. */
  readonly readings: readonly Reading[];
}

type KeyInput = Readonly<Record<string, number>>;

function inputOf({ figures }: KeyTouch, fields: readonly (typeof PARTS)[number][] = PARTS): KeyInput {
  return Object.fromEntries(fields.flatMap((field) => (figures[field] === undefined ? [] : [[field, figures[field].value]])));
}

/** A key as the ratio is worked out from it; a helper spring that was not weighed enters as the nought it is taken for. */
function noteOf(touch: KeyTouch): KeyInput {
  return { ...inputOf(touch), helperSpringG: touch.figures.helperSpringG?.value ?? 0, ...(touch.keyRatio === undefined ? {} : { keyRatio: touch.keyRatio }) };
}

function byQuantity(readings: readonly Reading[], belongs: (reading: Reading) => boolean): Readonly<Record<string, readonly Reading[]>> {
  const of: Record<string, Reading[]> = {};
  for (const reading of readings) {
    if (belongs(reading)) (of[reading.quantity] ??= []).push(reading);
  }
  return of;
}

/** Balance weight and friction: the operation `touch-weight`. */
export function touchWeightStory(title: string, output: string, behind: Behind): FigureStory {
  const { touch } = behind;
  const { frictionBiasG = 0 } = touch.figures;
  const input = { ...inputOf(touch, ['downWeightG', 'upWeightG', 'frontWeightG']), ...(frictionBiasG === 0 ? {} : { stepG: 2 * frictionBiasG }) };
  return { title, output, operation: 'touch-weight', input, origins: { ...keyOriginsOf(touch, input, readingsAt(behind.readings)), stepG: { how: 'step' } } };
}

/** Action ratio by weights of one note: the operation `weight-ratio`. */
export function weightRatioStory(title: string, behind: Behind): FigureStory {
  const input = noteOf(behind.touch);
  return { title, output: 'weightRatio', operation: 'weight-ratio', input, origins: keyOriginsOf(behind.touch, input, readingsAt(behind.readings)) };
}

/** Shares of one key's departure: the operation `touch-diagnosis`, against the same parts the analysis took. */
export function diagnosisStory(title: string, output: string, behind: Behind): FigureStory {
  const { touch } = behind;
  const { keyFrictionG } = touch.figures;
  const input = { ...noteOf(touch), ...(keyFrictionG === undefined ? {} : { keyFrictionG: keyFrictionG.value }), target: { ...touch.reference } };
  return { title, output, operation: 'touch-diagnosis', input, origins: { ...keyOriginsOf(touch, input, readingsAt(behind.readings)), ...TARGET_ORIGINS } };
}

/** Action ratio by weights of one colour: the operation `weight-ratio` over its notes. */
export function sectionRatioStory(title: string, { keys }: TouchAnalysis, colour: KeyTouch['colour'], readings: readonly Reading[]): FigureStory {
  const ofColour = keys.filter((key) => key.colour === colour && key.weightRatio !== undefined);
  const notes = ofColour.map(noteOf);
  const at = readingsAt(readings);
  const origins = ofColour.map((touch, index) => ({ [`notes[${String(index)}]`]: { key: touch.key }, ...keyOriginsOf(touch, notes[index] ?? {}, at, `notes[${String(index)}].`) }));
  return { title, output: 'weightRatio', operation: 'weight-ratio', input: { notes }, origins: Object.assign({}, ...origins) as Readonly<Record<string, Origin>> };
}

/** Action ratio by distance of one colour: the operation `lever-ratios`. Arms weighed several times enter by their mean. */
export function leverRatioStory(title: string, colour: KeyTouch['colour'], readings: readonly Reading[]): FigureStory {
  const index = colour === 'natural' ? 0 : 1;
  const of = byQuantity(readings, (reading) => reading.scope === 'colour' && reading.index === index);
  const input = Object.fromEntries(ARMS.flatMap((arm) => {
    const values = (of[arm] ?? []).flatMap(({ value }) => value ?? []);
    return values.length === 0 ? [] : [[arm, values.reduce((sum, value) => sum + value, 0) / values.length]];
  }));
  return { title, output: 'actionRatio', operation: 'lever-ratios', readings: of, input };
}

/** Which row of figures an evenness story is told of: the weights as read, or what they miss their targets by. */
type RowKind = 'weights' | 'deviations';

/** How even the keys are: the operation `evenness` over the row the intent speaks of. Undefined where the step is not known. */
export function evennessStory(title: string, output: string, { keys, summary }: TouchAnalysis, intent: TouchIntent | null, readings: readonly Reading[]): FigureStory | undefined {
  const { stepG } = summary;
  if (stepG === undefined || stepG <= 0) return undefined;
  const kind: RowKind = intent?.even === 'curve' && !['median', 'largestStep'].includes(output) ? 'deviations' : 'weights';
  const target = intent === null ? undefined : kind === 'deviations' ? 0 : intent.even === 'curve' ? undefined : intent.targetG;
  const band = intent === null || target === undefined ? {} : { target, tolerance: intent.toleranceG, ...commonUncertaintyOf(keys, intent) };
  const values = keys.map((key) => figureOf(key, kind, intent));
  return { title, output, operation: 'evenness', input: { values, ...band, step: stepG }, origins: { ...rowOriginsOf(keys, values, kind, intent, readings), ...ROW_ORIGINS } };
}

/** Origins of a row, key by key: the weight as read, what follows from two of them, or that there is none. */
function rowOriginsOf(keys: readonly KeyTouch[], values: readonly (number | null)[], kind: RowKind, intent: TouchIntent | null, readings: readonly Reading[]): Readonly<Record<string, Origin>> {
  const at = readingsAt(readings);
  return Object.fromEntries(keys.map(({ key }, index): [string, Origin] => {
    const down = at.ofKey(key, 'downWeightG');
    const both = [...down, ...at.ofKey(key, 'upWeightG')];
    const of = (): Origin => {
      if (values[index] === null) return both.length === 0 ? { key, how: 'unmeasured' } : { key, readings: both };
      if (intent?.even === 'balanceWeight') return { key, how: 'balance', readings: both };
      return kind === 'deviations' ? { key, how: 'missed', readings: down } : { key, readings: down };
    };
    return [`values[${String(index)}]`, of()];
  }));
}

/** The figure of a key that evenness is told of; null where there is no number. */
function figureOf({ verdict, figures, balanceWeightG, deviationG }: KeyTouch, kind: RowKind, intent: TouchIntent | null): number | null {
  if (verdict === 'outcome') return null;
  if (kind === 'deviations') return deviationG ?? null;
  return (intent?.even === 'balanceWeight' ? balanceWeightG : figures.downWeightG?.value) ?? null;
}

/** The expanded uncertainty (k = 2) of one value, where it is the same for all keys. */
function commonUncertaintyOf(keys: readonly KeyTouch[], intent: TouchIntent): { readonly uncertainty?: number } {
  const known = keys.filter((key) => figureOf(key, 'weights', intent) !== null)
    .map(({ figures, standardUncertaintyG }) => (intent.even === 'balanceWeight' ? standardUncertaintyG : figures.downWeightG?.standardUncertaintyG));
  const [first] = known;
  return first === undefined || known.some((one) => one !== first) ? {} : { uncertainty: 2 * first };
}
