import type { KeyNumber } from '#instrument';
import { type KeyPlotOptions, keyPlot } from './key-plot.ts';
import type { KeySign } from './keyboard-scene.ts';
import type { Scene } from './scene.ts';
import type { Standing } from './symbol.ts';

/** What was read at every key in one state, with the word its marks go by; cents. */
export interface PlottedCents {
  readonly state: Standing;
  readonly label: string;
  readonly cents: ReadonlyMap<KeyNumber, { readonly value: number; readonly uncertainty?: number | undefined }>;
}

export type TuningPlotOptions = Omit<KeyPlotOptions, 'series' | 'band' | 'target' | 'limit' | 'unitSign' | 'axis'> & {
  /** Earlier states first. */
  readonly read: readonly PlottedCents[];
  readonly toleranceCt?: number | undefined;
};

/** Plots the curve to tune to as a line over the keys, in its band where one is asked, and on it the pitches read. */
export function pitchPlot({ curve, read, toleranceCt, ...options }: TuningPlotOptions & { readonly curve: readonly (number | undefined)[] }): Scene {
  const shifted = (by: number): readonly (number | undefined)[] => curve.map((offset) => (offset === undefined ? undefined : offset + by));
  return keyPlot({ ...options, series: seriesOf(read), target: curve, unitSign: 'ct', ...(toleranceCt === undefined ? {} : { band: { from: shifted(-toleranceCt), to: shifted(toleranceCt) } }) });
}

/** Plots the spread of the unisons, with the widest that is allowed. */
export function unisonPlot({ read, toleranceCt, ...options }: TuningPlotOptions): Scene {
  return keyPlot({ ...options, series: seriesOf(read), unitSign: 'ct', ...(toleranceCt === undefined ? {} : { limit: toleranceCt }) });
}

const seriesOf = (read: readonly PlottedCents[]) => read.map(({ state, label, cents }) => ({ state, label, points: [...cents].map(([key, point]) => ({ key, ...point })) }));

/** The mark of each key by how far it lies off the curve; bare where nothing is asked. */
export function tuningSignsOf(off: ReadonlyMap<KeyNumber, number>, toleranceCt: number | undefined): ReadonlyMap<KeyNumber, KeySign> {
  if (toleranceCt === undefined) return new Map();
  return new Map([...off].map(([key, cents]): readonly [KeyNumber, KeySign] => [key, Math.abs(cents) <= toleranceCt ? 'inside' : cents > 0 ? 'over' : 'under']));
}
