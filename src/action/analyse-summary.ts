import { type TouchIntent, keyCountOf } from '#instrument';
import type { Caveat, KeyTouch, TouchInput, TouchSummary } from './analysis.ts';
import { expandedOf } from './analyse-context.ts';
import { evennessOf } from './evenness.ts';
import { type Band, type Row, insideCountOf } from './inside.ts';

/** Sums up the figure the intent speaks of over the whole compass; down weight where there is no intent yet. */
export function summarise(input: TouchInput, keys: readonly KeyTouch[]): TouchSummary {
  const count = (test: (key: KeyTouch) => boolean): number => keys.filter(test).length;
  const values = rowOf(input, keys);
  const measured = values.filter((value) => value !== null).length;
  const outcomes = count(({ verdict }) => verdict === 'outcome');
  const counts = {
    measured,
    keys: keyCountOf(input.compass),
    judged: measured + outcomes,
    inside: input.intent === null ? 0 : insideCountOf(missesOf(keys), bandOf(input.intent)),
    outcomes,
    upWeightLow: count(({ upWeightLow }) => upWeightLow),
    doubtful: count(({ doubtful }) => doubtful),
    insideGuarded: guardedOf(input, keys),
  };
  if (counts.measured === 0) return { ...counts, outliers: [] };
  return { ...counts, ...rowFiguresOf(input, keys, values) };
}

/** What limits what can be said of the whole. */
export function caveatsOf(input: TouchInput, keys: readonly KeyTouch[]): readonly Caveat[] {
  const weighed = keys.filter(({ frictionG }) => frictionG !== undefined);
  const caveats: readonly (readonly [Caveat, boolean])[] = [
    ['upright', input.kind === 'upright'],
    ['noIntent', input.intent === null],
    ['stepNotStated', weighed.some(({ standardUncertaintyG }) => standardUncertaintyG === undefined)],
    ['ruleNotStated', weighed.some(({ correctedFrictionG }) => correctedFrictionG === undefined)],
    ['dampersNotStated', input.dampers === undefined && weighed.length > 0],
    ['dampersResting', input.dampers === 'resting'],
    ['helperSpringsUnweighed', input.helperSprings === 'engaged' && weighed.some(({ figures }) => figures.helperSpringG === undefined)],
  ];
  return caveats.flatMap(([name, holds]) => (holds ? [name] : []));
}

function rowOf(input: TouchInput, keys: readonly KeyTouch[]): Row {
  const byBalance = input.intent?.even === 'balanceWeight';
  return keys.map(({ figures, balanceWeightG, verdict }) => (verdict === 'outcome' ? null : ((byBalance ? balanceWeightG : figures.downWeightG?.value) ?? null)));
}

/** What each key misses its target by; null for an outcome and where nothing was measured. */
function missesOf(keys: readonly KeyTouch[]): Row {
  return keys.map(({ verdict, deviationG }) => (verdict === 'outcome' ? null : (deviationG ?? null)));
}

/** The band misses are held to. */
function bandOf({ toleranceG }: TouchIntent): Band {
  return { target: 0, tolerance: toleranceG };
}

function rowFiguresOf(input: TouchInput, keys: readonly KeyTouch[], values: Row): Omit<TouchSummary, 'measured' | 'keys' | 'judged' | 'inside' | 'outcomes' | 'upWeightLow' | 'doubtful'> {
  const step = input.stepG ?? finestDifferenceOf(values);
  const { median, largestStep, largestStepIndex } = evennessOf({ values, step });
  const residuals = keys.map(({ deviationG }, index) => (values[index] === null ? null : (deviationG ?? values[index] ?? null)));
  const band = input.intent === null ? {} : { band: bandOf(input.intent) };
  const { outliers, capability } = evennessOf({ values: residuals, step, ...band });
  const [low, high] = largestStepIndex === undefined ? [] : [keys[largestStepIndex]?.key, keys[largestStepIndex + 1]?.key];
  return {
    stepG: step,
    medianG: median,
    largestStepG: largestStep,
    largestStepKeys: low === undefined || high === undefined ? undefined : [low, high],
    outliers: outliers.flatMap((index) => keys[index]?.key ?? []),
    capability: capability === undefined || !Number.isFinite(capability) ? undefined : capability,
  };
}

/** Smallest difference that occurs in a row: what its readings can tell apart, where the step of the weights was not stated. */
function finestDifferenceOf(values: Row): number {
  const sorted = values.filter((value) => value !== null).sort((a, b) => a - b);
  const differences = sorted.slice(1).map((value, index) => value - (sorted[index] ?? value)).filter((difference) => difference > 0);
  return differences.length === 0 ? 0 : Math.min(...differences);
}

/** Keys inside the tolerance narrowed by their own expanded uncertainty; undefined without an intent or where one uncertainty is unknown. @source JCGM-106 */
function guardedOf({ intent }: TouchInput, keys: readonly KeyTouch[]): number | undefined {
  if (intent === null) return undefined;
  const misses = missesOf(keys);
  const expanded = keys.map(({ figures, standardUncertaintyG }) => expandedOf(intent.even === 'balanceWeight' ? standardUncertaintyG : figures.downWeightG?.standardUncertaintyG));
  const isUnknown = misses.some((miss, index) => miss !== null && expanded[index] === undefined);
  if (isUnknown || misses.every((miss) => miss === null)) return undefined;
  return insideCountOf(misses, bandOf(intent), (index) => expanded[index] ?? 0);
}
