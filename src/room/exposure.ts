import { type DecibelsA, type Hours, decibelsA } from '#units';
import { sumOf } from '#numerics';

export interface NoiseSpan {
  readonly levelDbA: DecibelsA;
  readonly hours: Hours;
}

/** Levels of the directive, and below all of them. */
export const actionLevels = ['below', 'lower', 'upper', 'limit'] as const;
export type ActionLevel = (typeof actionLevels)[number];

/** Daily exposure at which duties of employers begin. dB(A). @source EU-2003-10 article 3 */
const THRESHOLDS: readonly (readonly [ActionLevel, number])[] = [['limit', 87], ['upper', 85], ['lower', 80]];

/** Exposure of a day as one level over eight hours: 10·lg(Σ tᵢ·10^(Lᵢ/10)/8). dB(A). @source EU-2003-10, ISO-1999 */
export function dailyExposureOf(spans: readonly NoiseSpan[]): DecibelsA {
  return decibelsA(10 * Math.log10(sumOf(spans.map(({ levelDbA, hours }) => hours * 10 ** (levelDbA / 10))) / 8));
}

/** The highest of the action levels that an exposure reaches; the limit itself counts with hearing protection worn. @source EU-2003-10 article 3 */
export function actionLevelOf(dailyDbA: DecibelsA): ActionLevel {
  return THRESHOLDS.find(([, level]) => dailyDbA >= level)?.[0] ?? 'below';
}
