import { type CubicMetres, type Seconds, type SquareMetres, squareMetres } from '#units';
import { type PerBand, perBand } from './bands.ts';
import { SABINE_S_PER_M } from './reverberation.ts';

/** What a material does for a band: nothing to do, hang or lay so much, take so much out, or no help to be had from it. */
export const absorptionAdvices = ['enough', 'add', 'take-out', 'no-help'] as const;
export type AbsorptionAdvice = (typeof absorptionAdvices)[number];

/** Below so small a gain in absorption no area of the material helps. @source PRACTICE */
export const LEAST_GAIN = 0.05;

export interface AbsorptionNeed {
  /** Below nought: to be taken out. None where the material takes in no more than what it covers. */
  readonly areaM2: SquareMetres | null;
  readonly advice: AbsorptionAdvice;
}

export interface NeedQuestion {
  readonly volumeM3: CubicMetres;
  readonly present: PerBand<Seconds>;
  readonly target: PerBand<Seconds>;
  readonly material: PerBand;
  /** What lies or hangs where the material would go; bare air takes in nothing. */
  readonly covers: PerBand;
}

/**
 * Area of a material that would bring each band to its target: x = 0.161 V (1/T_target − 1/T_present)/(α_new − α_covered).
 * Square metres. Bands differ: cloth that suits the treble leaves the bass as it was, and an area that suits one band spoils another.
 * @source SABINE-1922
 */
export function absorptionNeededOf({ volumeM3, present, target, material, covers }: NeedQuestion): PerBand<AbsorptionNeed> {
  return perBand((band): AbsorptionNeed => {
    const [now = 0, wanted = 0] = [present[band], target[band]];
    const gain = (material[band] ?? 0) - (covers[band] ?? 0);
    const missing = SABINE_S_PER_M * volumeM3 * (1 / wanted - 1 / now);
    if (missing === 0) return { areaM2: squareMetres(0), advice: 'enough' };
    if (gain < LEAST_GAIN) return { areaM2: null, advice: 'no-help' };
    return { areaM2: squareMetres(missing / gain), advice: missing > 0 ? 'add' : 'take-out' };
  });
}
