import { sumOf } from '#numerics';
import { type Grams, type GramsPerCubicCentimetre, type Millimetres, type SquareMillimetres, grams } from '#units';

/** Like pieces of key covering: their area, and their thickness by a calliper at a few of them. */
export interface IvoryPieces {
  readonly areaMm2: SquareMillimetres;
  readonly thicknessMm: Millimetres;
  /** Standard uncertainty, taken as the same fault for every piece of the row. */
  readonly thicknessUncertaintyMm: Millimetres;
  readonly count: number;
}

const MM3_PER_CM3 = 1000;

export interface IvoryMass {
  readonly massG: Grams;
  /** Standard uncertainty. */
  readonly massUncertaintyG: Grams;
}

/**
 * Mass of ivory from measured pieces: m = ρ·Σ n·A·t; u² = ρ²·Σ (n·A·u_t)² + (u_ρ·Σ n·A·t)², rows apart from one another. Grams.
 * @source JCGM-100
 */
export function ivoryMassOf(pieces: readonly IvoryPieces[], densityGPerCm3: GramsPerCubicCentimetre, densityUncertaintyGPerCm3: GramsPerCubicCentimetre): IvoryMass {
  const volumeCm3 = sumOf(pieces.map(({ areaMm2, thicknessMm, count }) => (count * areaMm2 * thicknessMm) / MM3_PER_CM3));
  const doubts = pieces.map(({ areaMm2, thicknessUncertaintyMm, count }) => (densityGPerCm3 * count * areaMm2 * thicknessUncertaintyMm) / MM3_PER_CM3);
  return { massG: grams(densityGPerCm3 * volumeCm3), massUncertaintyG: grams(Math.hypot(...doubts, densityUncertaintyGPerCm3 * volumeCm3)) };
}

/**
 * Masses together: they add, and their doubts too, as if each erred the same way (the safe side: densities and gauges are shared). Grams.
 * No doubt is told where one of them has none.
 * @source JCGM-100, 5.2.2 note 1
 */
export function massTogether(masses: readonly { readonly massG: Grams; readonly massUncertaintyG?: Grams | undefined }[]): { readonly massG: Grams; readonly massUncertaintyG?: Grams } {
  const doubts = masses.flatMap(({ massUncertaintyG }) => (massUncertaintyG === undefined ? [] : [massUncertaintyG]));
  return { massG: grams(sumOf(masses.map(({ massG }) => massG))), ...(doubts.length < masses.length ? {} : { massUncertaintyG: grams(sumOf(doubts)) }) };
}
