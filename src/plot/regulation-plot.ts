import type { AnalysedHammer, HammerAnalysis, PublishedStrike, RegulatedKey, RegulationAnalysis, RegulationName } from '#action';
import type { KeyNumber, State } from '#instrument';
import { type KeyPlotOptions, keyPlot } from './key-plot.ts';
import type { KeySign } from './keyboard-scene.ts';
import type { Scene } from './scene.ts';

type Options = Omit<KeyPlotOptions, 'series' | 'band' | 'target' | 'limit' | 'unitSign' | 'axis'>;

/** What was worked out of one state, with the word its marks go by. */
export interface PlottedState<Worked> {
  readonly state: State;
  readonly label: string;
  readonly worked: Worked;
}

/** Options of a plot of one figure over the keys; earlier states first. */
export type StatesPlotOptions<Name, Worked> = Options & { readonly name: Name; readonly states: readonly PlottedState<Worked>[] };

export type RegulationPlotOptions = StatesPlotOptions<RegulationName, RegulationAnalysis> & { readonly toleranceMm: number };

/** Plots one figure of the regulation over the keyboard, states overlaid, with what is asked of each key and its tolerance. */
export function regulationPlot({ name, states, toleranceMm, ...options }: RegulationPlotOptions): Scene {
  const series = states.map(({ state, label, worked }) => ({ state, label, points: worked.keys.map(({ key, read }) => ({ key, value: read[name] })) }));
  const asked = states[0]?.worked.keys.map((key) => key.asked[name]) ?? [];
  const moved = (by: number): readonly (number | undefined)[] => asked.map((value) => (value === undefined ? undefined : value + by));
  return keyPlot({ ...options, series, ...(asked.some((value) => value !== undefined) ? { target: asked, band: { from: moved(-toleranceMm), to: moved(toleranceMm) } } : {}), unitSign: 'mm' });
}

/** Signs of the keys by their regulation: with a finding, inside, not measured; bare where read but nothing is asked. */
export function regulationSignsOf({ keys }: RegulationAnalysis): ReadonlyMap<KeyNumber, KeySign> {
  return new Map(keys.flatMap((key) => {
    const sign = signOf(key);
    return sign === undefined ? [] : [[key.key, sign] as const];
  }));
}

function signOf({ read, asked, findings }: RegulatedKey): KeySign | undefined {
  const names = Object.keys(read) as RegulationName[];
  if (names.length === 0) return 'unmeasured';
  if (findings.length > 0) return 'work';
  return names.some((name) => asked[name] !== undefined) ? 'inside' : undefined;
}

/** The figures of the hammers that are plotted over the keys. */
export const hammerFigures = ['strikeRatio', 'feltOverWoodMm', 'boreMm', 'squarenessDeg'] as const;
export type HammerFigure = (typeof hammerFigures)[number];

export type HammerPlotOptions = StatesPlotOptions<HammerFigure, HammerAnalysis> & {
  readonly published: PublishedStrike;
  /** Least felt by key (index = key − 1). */
  readonly leastFeltMm: readonly number[];
};

const SIGN: Readonly<Record<HammerFigure, string>> = { strikeRatio: '', feltOverWoodMm: 'mm', boreMm: 'mm', squarenessDeg: '°' };

/** Plots one figure of the hammers over the keyboard: strike ratios over what was published, felt over the least, bore over the level one. */
export function hammerPlot({ name: figure, states, published, leastFeltMm, ...options }: HammerPlotOptions): Scene {
  const series = states.map(({ state, label, worked }) => ({ state, label, points: worked.keys.map((hammer) => ({ key: hammer.key, value: valueOf(figure, hammer) })) }));
  const aims = {
    strikeRatio: { band: { from: published.from, to: published.to }, target: published.measured },
    feltOverWoodMm: { limit: leastFeltMm },
    boreMm: { target: states.at(-1)?.worked.keys.map(({ levelBoreMm }) => levelBoreMm) ?? [] },
    squarenessDeg: { limit: 0 },
  } as const satisfies Readonly<Record<HammerFigure, Pick<KeyPlotOptions, 'band' | 'target' | 'limit'>>>;
  return keyPlot({ ...options, series, ...aims[figure], ...(figure === 'strikeRatio' ? { domain: [0, Math.max(0.15, ...series.flatMap(({ points }) => points.map(({ value = 0 }) => value)))] as const } : {}), unitSign: SIGN[figure] });
}

function valueOf(figure: HammerFigure, { strikeRatio, feltOverWoodMm, boreMm, strike }: AnalysedHammer): number | undefined {
  switch (figure) {
    case 'strikeRatio': return strikeRatio;
    case 'feltOverWoodMm': return feltOverWoodMm;
    case 'boreMm': return boreMm;
    case 'squarenessDeg': return strike?.squarenessDeg;
  }
}

/** Signs of the keys by their hammers: with a finding, calm where read, not measured. */
export function hammerSignsOf({ keys }: HammerAnalysis): ReadonlyMap<KeyNumber, KeySign> {
  return new Map(keys.map(({ key, findings, strikeDistanceMm, feltOverWoodMm, boreMm }): readonly [KeyNumber, KeySign] =>
    [key, findings.length > 0 ? 'work' : strikeDistanceMm === undefined && feltOverWoodMm === undefined && boreMm === undefined ? 'unmeasured' : 'inside']));
}
