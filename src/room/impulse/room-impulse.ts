import { type Samples, meanOf, standardDeviationOf } from '#numerics';
import { midbandOf, octaveBands } from '../bands.ts';
import { type BandDecay, bandDecayOf } from './decay.ts';
import { impulsesOf } from './impulses.ts';
import { filteredBackwards, upperEdgeOf } from './octave-filter.ts';
import { type Sweep, impulseBehind } from './sweep.ts';

/** Width of an octave, as a share of its middle: 2^½ − 2^(−½) but for the exact tenth powers. */
const WIDTH = 10 ** 0.15 - 10 ** -0.15;

/** A time over all impulses that tell it. */
export interface MeanTime {
  readonly seconds: number;
  readonly count: number;
  /** Standard deviation between impulses; none from one alone. */
  readonly spreadS?: number;
}

/** What a take tells of one octave band. */
export interface BandAnswer {
  readonly bandHz: number;
  readonly edt?: MeanTime;
  readonly t20?: MeanTime;
  readonly t30?: MeanTime;
  readonly each: readonly BandDecay[];
}

/**
 * Reverberation of a room from claps, bursts or a sweep, octave by octave: filtered backwards, squared, cut where it meets the noise,
 * summed backwards, fitted by straight lines, and the times of all impulses averaged. A time that the data do not bear is not told.
 * `heard` is told after each band how many of all are done.
 * @source ISO-3382-2, SCHROEDER-1965, LUNDEBY-1995
 */
export function roomImpulseOf(samples: Samples, sweep?: Sweep, heard?: (done: number, of: number) => void): { readonly impulses: number; readonly bands: readonly BandAnswer[] } {
  const { sampleRateHz } = samples;
  const taken = loudestOf(samples.channels);
  const signal = sweep === undefined ? taken : impulseBehind(taken, sweep, sampleRateHz);
  const places = sweep === undefined ? impulsesOf(signal, sampleRateHz) : strongestOf(impulsesOf(signal, sampleRateHz), signal);
  const bands = octaveBands.flatMap((bandHz, index): readonly BandAnswer[] => {
    const mid = midbandOf(index);
    if (upperEdgeOf(mid) >= sampleRateHz / 2) return [];
    heard?.(index, octaveBands.length);
    const each = places.map(({ from, to }) => bandDecayOf(filteredBackwards(signal.subarray(from, to), mid, sampleRateHz).map((value) => value * value), sampleRateHz, WIDTH * mid));
    return [{ bandHz, each, ...named('edt', each.flatMap(({ edtS }) => edtS ?? [])), ...named('t20', each.flatMap(({ t20S }) => t20S ?? [])), ...named('t30', each.flatMap(({ t30S }) => t30S ?? [])) }];
  });
  return { impulses: places.length, bands };
}

function named<K extends string>(name: K, times: readonly number[]): { readonly [key in K]?: MeanTime } {
  if (times.length === 0) return {};
  const mean: MeanTime = { seconds: meanOf(times), count: times.length, ...(times.length > 1 ? { spreadS: standardDeviationOf(times) } : {}) };
  return { [name]: mean } as { readonly [key in K]?: MeanTime };
}

const energyOf = (signal: Float64Array): number => signal.reduce((sum, value) => sum + value * value, 0);

/** The channel that heard most. */
function loudestOf(channels: readonly Float64Array[]): Float64Array {
  return channels.reduce((loudest, channel) => (energyOf(channel) > energyOf(loudest) ? channel : loudest), channels[0] ?? new Float64Array(1));
}

/** Of a divided sweep only the one impulse counts. */
function strongestOf<T extends { readonly from: number; readonly to: number }>(places: readonly T[], signal: Float64Array): readonly T[] {
  return [...places].sort((a, b) => energyOf(signal.subarray(b.from, b.to)) - energyOf(signal.subarray(a.from, a.to))).slice(0, 1);
}
