import type { PartialLevel } from './partial-levels.ts';

/** A figure and its standard uncertainty. */
export interface Figure {
  readonly value: number;
  readonly uncertainty: number;
}

const total = (levels: readonly PartialLevel[]): number => levels.reduce((sum, { amplitude }) => sum + amplitude, 0);

/** Figure Σ wₙ·Aₙ / Σ Aₙ: what a partial’s amplitude moves it by is (wₙ − figure)/ΣA. */
function weighed(levels: readonly PartialLevel[], weightOf: (level: PartialLevel) => number): Figure {
  const sum = total(levels);
  const value = levels.reduce((all, level) => all + weightOf(level) * level.amplitude, 0) / sum;
  return { value, uncertainty: Math.hypot(...levels.map((level) => ((weightOf(level) - value) * level.doubt) / sum)) };
}

/**
 * Harmonic centroid Σ n·Aₙ / Σ Aₙ, the mean number of a partial by amplitude: 1 when only the first sounds.
 * @source PEETERS-2011
 */
export function harmonicCentroidOf(levels: readonly PartialLevel[]): Figure {
  return weighed(levels, ({ n }) => n);
}

/** Tristimulus. */
export interface Tristimulus {
  readonly first: Figure;
  readonly middle: Figure;
  readonly high: Figure;
}

/**
 * Tristimulus: the shares of the amplitude in partial 1, in 2 to 4, and from 5 on.
 * @source POLLARD-JANSSON-1982
 */
export function tristimulusOf(levels: readonly PartialLevel[]): Tristimulus {
  const shareOf = (inside: (n: number) => boolean): Figure => weighed(levels, ({ n }) => (inside(n) ? 1 : 0));
  return { first: shareOf((n) => n === 1), middle: shareOf((n) => n >= 2 && n <= 4), high: shareOf((n) => n >= 5) };
}

/** Highest partial the slope is read over. */
const HIGHEST_SLOPE_N = 24;

/** Slope of the partials, dB per octave, with its standard error and how many partials it rests on. */
export interface PartialSlope extends Figure {
  readonly partials: number;
}

/**
 * Slope of 20·lg Aₙ over lg₂ n by least squares, partials 1 to 24. The notches of the strike point scatter it, and its standard error says how much.
 * @source KTH-LECTURES
 */
export function partialSlopeOf(all: readonly PartialLevel[]): PartialSlope {
  const points = all.filter(({ n }) => n <= HIGHEST_SLOPE_N).map(({ n, amplitude }) => ({ x: Math.log2(n), y: 20 * Math.log10(amplitude) }));
  const meanOf = (pick: (point: (typeof points)[number]) => number): number => points.reduce((sum, point) => sum + pick(point), 0) / points.length;
  const [meanX, meanY] = [meanOf(({ x }) => x), meanOf(({ y }) => y)];
  const spread = points.reduce((sum, { x }) => sum + (x - meanX) ** 2, 0);
  const value = points.reduce((sum, { x, y }) => sum + (x - meanX) * (y - meanY), 0) / spread;
  const residual = points.reduce((sum, { x, y }) => sum + (y - meanY - value * (x - meanX)) ** 2, 0);
  return { value, uncertainty: Math.sqrt(residual / Math.max(1, points.length - 2) / spread), partials: points.length };
}
