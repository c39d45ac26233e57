import type { AnalysedUpright } from '#action';
import type { KeyNumber } from '#instrument';
import { keyPlot } from './key-plot.ts';
import type { KeySign } from './keyboard-scene.ts';
import type { StatesPlotOptions } from './regulation-plot.ts';
import type { Scene } from './scene.ts';

/** The figures of an upright that are plotted over the keys, grams at the key front. */
export const uprightPlots = ['balance', 'spring', 'damper'] as const;
export type UprightPlotName = (typeof uprightPlots)[number];

/** What a plot shows of a key; `undefined` where it is not known. */
export function uprightFigureOf(name: UprightPlotName, { balanceWeightG, springShareG, damperShareG }: AnalysedUpright): number | undefined {
  return { balance: balanceWeightG, spring: springShareG, damper: damperShareG }[name];
}

/** Plots one figure of an upright over the keyboard, states overlaid; the weighed balance over the one by the parts. */
export function uprightPlot({ name, states, ...options }: StatesPlotOptions<UprightPlotName, readonly AnalysedUpright[]>): Scene {
  const series = states.map(({ state, label, worked }) => ({ state, label, points: worked.map((key) => ({ key: key.key, value: uprightFigureOf(name, key) })) }));
  const byParts = name === 'balance' ? states.map(({ worked }) => worked.map((key) => key.byParts?.balanceWeightG)).findLast((of) => of.some((value) => value !== undefined)) : undefined;
  return keyPlot({ ...options, series, unitSign: 'g', ...(byParts === undefined ? {} : { target: byParts }) });
}

/** Signs of the keys: with a finding, calm where spring or damper was read, else not measured. */
export function uprightSignsOf(keys: readonly AnalysedUpright[]): ReadonlyMap<KeyNumber, KeySign> {
  return new Map(keys.map(({ key, read, findings }): readonly [KeyNumber, KeySign] =>
    [key, findings.length > 0 ? 'work' : read.springTorqueGMm === undefined && read.damperG === undefined ? 'unmeasured' : 'inside']));
}
