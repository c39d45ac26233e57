import { meanOf, standardDeviationOf } from '#numerics';
import { type Millimetres, millimetres } from '#units';

/** Fewer readings of a thickness than these say nothing of their own doubt. @source JCGM-101, scaled t-distribution */
export const LEAST_THICKNESSES = 4;

/**
 * Mean of thicknesses read at some of many like pieces, and its standard uncertainty: u² = s²/n·(n−1)/(n−3) + u_gauge².
 * The factor is that of the scaled t-distribution, so that a few readings are not taken for many; needs four or more. Millimetres.
 * @source JCGM-101
 * @throws RangeError on fewer than four: callers refuse that first.
 */
export function thicknessOf(readingsMm: readonly Millimetres[], gaugeUncertaintyMm: Millimetres): { readonly meanMm: Millimetres; readonly uncertaintyMm: Millimetres } {
  const n = readingsMm.length;
  if (n < LEAST_THICKNESSES) throw new RangeError(`${String(n)} readings of a thickness`);
  const scatter = (standardDeviationOf(readingsMm) / Math.sqrt(n)) * Math.sqrt((n - 1) / (n - 3));
  return { meanMm: millimetres(meanOf(readingsMm)), uncertaintyMm: millimetres(Math.hypot(scatter, gaugeUncertaintyMm)) };
}
