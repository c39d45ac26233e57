import type { KeyTouch, LeverArms, TouchAnalysis } from '#action';
import type { QuantityName, Reading, TouchIntent } from '#instrument';
import type { FigureStory } from '../figure/figure-store.ts';

/** Input fields of the touch operations that carry the name of the quantity they were read as. */
const FIELDS = ['downWeightG', 'upWeightG', 'frontWeightG', 'hammerWeightG', 'wippenWeightG', 'helperSpringG'] as const satisfies readonly QuantityName[];

const ARMS = ['keyFrontMm', 'keyBackMm', 'wippenHeelMm', 'wippenJackMm', 'rollerMm', 'hammerMm'] as const satisfies readonly (QuantityName & keyof LeverArms)[];

/** What stands behind the derived figures of one key. */
export interface Behind {
  readonly touch: KeyTouch;
  /** Standing readings of the state. */
  readonly readings: Iterable<Reading>;
}

type KeyInput = Readonly<Record<string, number>>;

function inputOf({ figures }: KeyTouch, fields: readonly (typeof FIELDS)[number][] = FIELDS): KeyInput {
  return Object.fromEntries(fields.flatMap((field) => (figures[field] === undefined ? [] : [[field, figures[field].value]])));
}

function noteOf(touch: KeyTouch): KeyInput {
  return { ...inputOf(touch), ...(touch.keyRatio === undefined ? {} : { keyRatio: touch.keyRatio }) };
}

function byQuantity(readings: Iterable<Reading>, belongs: (reading: Reading) => boolean): Readonly<Record<string, readonly Reading[]>> {
  const of: Record<string, Reading[]> = {};
  for (const reading of readings) {
    if (belongs(reading)) (of[reading.quantity] ??= []).push(reading);
  }
  return of;
}

function readingsOf({ touch, readings }: Behind): Readonly<Record<string, readonly Reading[]>> {
  return byQuantity(readings, ({ scope, index }) => scope === 'key' && index === touch.key);
}

/** Balance weight and friction: the operation `touch-weight`. */
export function touchWeightStory(title: string, output: string, behind: Behind): FigureStory {
  const { touch } = behind;
  const { frictionBiasG = 0 } = touch.figures;
  return {
    title, output, operation: 'touch-weight', readings: readingsOf(behind),
    input: { ...inputOf(touch, ['downWeightG', 'upWeightG', 'frontWeightG']), ...(frictionBiasG === 0 ? {} : { stepG: 2 * frictionBiasG }) },
  };
}

/** Action ratio by weights of one note: the operation `weight-ratio`. */
export function weightRatioStory(title: string, behind: Behind): FigureStory {
  return { title, output: 'weightRatio', operation: 'weight-ratio', readings: readingsOf(behind), input: noteOf(behind.touch) };
}

/** Shares of one key's departure: the operation `touch-diagnosis`, against the same parts the analysis took. */
export function diagnosisStory(title: string, output: string, behind: Behind): FigureStory {
  const { touch } = behind;
  const { keyFrictionG } = touch.figures;
  return {
    title, output, operation: 'touch-diagnosis', readings: readingsOf(behind),
    input: { ...noteOf(touch), ...(keyFrictionG === undefined ? {} : { keyFrictionG: keyFrictionG.value }), target: { ...touch.reference } },
  };
}

/** Action ratio by weights of one colour: the operation `weight-ratio` over its notes. */
export function sectionRatioStory(title: string, { keys }: TouchAnalysis, colour: KeyTouch['colour']): FigureStory {
  const notes = keys.filter((key) => key.colour === colour && key.weightRatio !== undefined).map(noteOf);
  return { title, output: 'weightRatio', operation: 'weight-ratio', input: { notes } };
}

/** Action ratio by distance of one colour: the operation `lever-ratios`. Arms weighed several times enter by their mean. */
export function leverRatioStory(title: string, colour: KeyTouch['colour'], readings: Iterable<Reading>): FigureStory {
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
export function evennessStory(title: string, output: string, { keys, summary }: TouchAnalysis, intent: TouchIntent | null): FigureStory | undefined {
  const { stepG } = summary;
  if (stepG === undefined || stepG <= 0) return undefined;
  const kind: RowKind = intent?.even === 'curve' && !['median', 'largestStep'].includes(output) ? 'deviations' : 'weights';
  const target = intent === null ? undefined : kind === 'deviations' ? 0 : intent.even === 'curve' ? undefined : intent.targetG;
  const band = intent === null || target === undefined ? {} : { target, tolerance: intent.toleranceG, ...commonUncertaintyOf(keys, intent) };
  return { title, output, operation: 'evenness', input: { values: keys.map((key) => figureOf(key, kind, intent)), ...band, step: stepG } };
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
