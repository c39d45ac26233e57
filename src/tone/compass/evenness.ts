import { type Result, map } from '#result';
import { type AlongKeys, type KeyFigure, type KeyOffset, alongKeysOf } from './along-keys.ts';

/** What is looked at along the keys. Sustain is taken by its logarithm: a tenth shorter is the same step in bass and treble. */
export const evenProperties = ['brightness', 'level', 'sustain'] as const;
export type EvenProperty = (typeof evenProperties)[number];

/** A row of keys, how even it is, and who stands out. */
export interface ToneEvenness extends AlongKeys {
  /** Of sustain, value over curve. */
  readonly ratios?: readonly number[];
  readonly outliers: readonly number[];
  /** Root mean square of the steps from each key to the next that was measured, beyond what the curve steps. */
  readonly stepRms: number;
}

/** An offset beyond this many scatters stands out. @source IGLEWICZ-HOAGLIN */
export const FENCE = 3.5;

/** How even a property is along the keys: offsets from a smooth curve, their scatter, the keys beyond 3.5 scatters. */
export function toneEvennessOf(property: EvenProperty, figures: readonly KeyFigure[], lambda?: number): Result<ToneEvenness> {
  if (property !== 'sustain') return map(alongKeysOf(figures, lambda), judged);
  const logs = figures.map(({ key, value, uncertainty }) => ({ key, value: Math.log(value), ...(uncertainty === undefined ? {} : { uncertainty: uncertainty / value }) }));
  return map(alongKeysOf(logs, lambda), (along) => {
    const { keys, ...rest } = judged(along);
    return { ...rest, keys: keys.map(straightened), ratios: keys.map(({ offset }) => Math.exp(offset)) };
  });
}

function judged(along: AlongKeys): ToneEvenness {
  const limit = FENCE * along.scatter;
  const steps = along.keys.slice(1).map(({ offset }, index) => offset - (along.keys[index]?.offset ?? offset));
  return {
    ...along, outliers: along.keys.filter(({ offset }) => Math.abs(offset) > limit + 1e-12 * Math.abs(limit)).map(({ key }) => key),
    stepRms: Math.sqrt(steps.reduce((sum, step) => sum + step * step, 0) / Math.max(1, steps.length)),
  };
}

/** Out of logarithms again; the offset stays a ratio’s logarithm turned into a difference of values. */
function straightened({ key, value, curve, uncertainty }: KeyOffset): KeyOffset {
  const [own, smooth] = [Math.exp(value), Math.exp(curve)];
  return { key, value: own, curve: smooth, offset: own - smooth, ...(uncertainty === undefined ? {} : { uncertainty: uncertainty * own }) };
}
