import { meanOf, medianOf, scaledMadOf, standardDeviationOf } from '#numerics';
import { type Band, type Row, insideCountOf, isWithin } from './inside.ts';

export interface EvennessQuestion {
  /** One value per key, bass to treble, all of one unit. */
  readonly values: Row;
  /** Smallest difference the weights or the scale can tell. */
  readonly step: number;
  /** Nothing is judged inside when left out. */
  readonly band?: Band;
  /** Expanded uncertainty (k = 2) of one value. */
  readonly uncertainty?: number;
}

export interface Evenness {
  readonly median: number;
  /** Values within the band, its ends included. */
  readonly inside?: number;
  /** Values within the band narrowed by the uncertainty at both ends. */
  readonly insideGuarded?: number;
  /** Largest difference of two neighbours, and the place in the row of the lower one; absent without two neighbours. */
  readonly largestStep?: number;
  readonly largestStepIndex?: number;
  readonly medianStep?: number;
  /** Places in the row, from 0, of values beyond the fence. */
  readonly outliers: readonly number[];
  /** Ppk-style figure of the fenced values. To be shown only beside the count. */
  readonly capability?: number;
}

/** How many robust standard deviations from the median still belong to the set. @source OWN planted faults in an invented keyboard */
const FENCE = 3.5;

/**
 * How even a row is.
 * inside: |x − T| ≤ t; guarded: |x − T| ≤ t − U. Outlier: |x − median| > 3.5·max(MADN, q), since readings in whole steps q
 * may have a MADN of 0. Capability: min(T + t − m, m − T + t)/(3s), mean m and standard deviation s of what is inside the
 * fence, s not below q/√12: the reading's own step.
 *
 * A null takes part in no figure and counts as not inside. Reading noise alone caps the capability: give it beside.
 * @throws RangeError when no value is a number: callers refuse that first.
 * @source JCGM-106 guarded acceptance with a guard band of U · OWN fence and capability
 */
export function evennessOf({ values, step, band, uncertainty }: EvennessQuestion): Evenness {
  const numbers = values.filter((value) => value !== null);
  const median = medianOf(numbers);
  const reach = FENCE * Math.max(scaledMadOf(numbers), step);
  const fenced = numbers.filter((value) => isWithin(value, median, reach));
  const outliers = values.flatMap((value, index) => (value === null || isWithin(value, median, reach) ? [] : [index]));
  const judged = band === undefined ? {} : {
    inside: insideCountOf(values, band),
    ...(uncertainty === undefined ? {} : { insideGuarded: insideCountOf(values, band, () => uncertainty) }),
    capability: capabilityOf(fenced, step, band),
  };
  return { median, ...judged, ...stepsOf(values), outliers };
}

function capabilityOf(fenced: readonly number[], step: number, { target, tolerance }: Band): number {
  const room = tolerance - Math.abs(meanOf(fenced) - target);
  return room / (3 * Math.max(standardDeviationOf(fenced), step / Math.sqrt(12)));
}

/** Differences between neighbours that both have a number. */
function stepsOf(values: Row): Pick<Evenness, 'largestStep' | 'largestStepIndex' | 'medianStep'> {
  const steps = values.slice(1).flatMap((value, index) => {
    const below = values[index] ?? null;
    return value === null || below === null ? [] : [{ index, size: Math.abs(value - below) }];
  });
  const [first, ...rest] = steps;
  if (first === undefined) return {};
  const largest = rest.reduce((best, step) => (step.size > best.size ? step : best), first);
  return { largestStep: largest.size, largestStepIndex: largest.index, medianStep: medianOf(steps.map(({ size }) => size)) };
}
