import type { KeyNumber, State } from '#instrument';
import type { ShortStretch, VoicingMap } from '#tone';
import { type KeyPlotOptions, keyPlot } from './key-plot.ts';
import type { KeySign } from './keyboard-scene.ts';
import type { Scene } from './scene.ts';
import { type SoundCurveOptions, soundCurve } from './sound-curve.ts';
import { throughGaps } from './through-gaps.ts';

/** Whiskers are drawn at twice the standard uncertainty, as hammers are judged. @source JCGM-100 clause 6.3.3 */
const COVERAGE = 2;

type Options = Omit<KeyPlotOptions, 'series' | 'band' | 'target' | 'limit' | 'flags' | 'axis'>;

export type VoicingPlotOptions = Options & {
  readonly state: State;
  readonly label: string;
  readonly map: VoicingMap;
  readonly repeatability: number;
};

/** Plots the brightness of every key at one level with the curve through its neighbours: a hammer is bright or dull where its whisker, repeatability and own doubt together, does not reach the curve. */
export function voicingPlot({ state, label, map: { hammers, bright, dull }, repeatability, ...options }: VoicingPlotOptions): Scene {
  const target = throughGaps(new Map(hammers.map(({ key, curve }) => [key, curve])));
  const points = hammers.map(({ key, value, uncertainty = 0 }) => ({ key, value, uncertainty: COVERAGE * Math.hypot(repeatability, uncertainty) }));
  return keyPlot({ ...options, series: [{ state, label, points }], target, flags: new Set([...bright, ...dull]) });
}

/** Signs of the keys by their hammers. */
export function voicingSignsOf({ hammers }: VoicingMap): ReadonlyMap<KeyNumber, KeySign> {
  return new Map(hammers.map(({ key, voice }) => [key, voice === 'even' ? 'inside' : voice] as const));
}

/** Signs of the keys by their sustain: part of a stretch that rings short, or not. */
export function sustainSignsOf(keys: Iterable<KeyNumber>, short: readonly Pick<ShortStretch, 'fromKey' | 'toKey'>[]): ReadonlyMap<KeyNumber, KeySign> {
  return new Map([...keys].map((key) => [key, short.some(({ fromKey, toKey }) => key >= fromKey && key <= toKey) ? 'short' : 'inside'] as const));
}

/** The strikes of a key in one state, with the line through them where there is one. */
export interface StruckKey {
  readonly state: State;
  readonly label: string;
  readonly strikes: readonly { readonly levelDb: number; readonly brightness: number }[];
  readonly brightnessAt?: ((levelDb: number) => number) | undefined;
}

/** Plots the brightness of one key against the level of the strike, a mark each, and the line through them from the softest to the loudest. */
export function strikesPlot({ keys, ...options }: Omit<SoundCurveOptions, 'series'> & { readonly keys: readonly StruckKey[] }): Scene {
  return soundCurve({
    ...options,
    series: keys.map(({ state, label, strikes, brightnessAt }) => {
      const levels = strikes.map(({ levelDb }) => levelDb);
      const ends = brightnessAt === undefined ? [] : [Math.min(...levels), Math.max(...levels)].map((x) => ({ x, y: brightnessAt(x) }));
      return { state, label, points: ends, marked: strikes.map(({ levelDb, brightness }) => ({ x: levelDb, y: brightness })) };
    }),
  });
}
