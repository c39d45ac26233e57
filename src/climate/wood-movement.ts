import { type GrainDirection, type WoodSpecies, woodMovements } from '#materials';
import { type Millimetres, type Percent, millimetres } from '#units';

/** Moisture between which the coefficients were measured. @source FPL-190-13 */
export const MEASURED_BETWEEN_PCT = { from: 6, to: 14 } as const;

export interface Board {
  readonly species: WoodSpecies;
  readonly direction: GrainDirection;
  readonly widthMm: Millimetres;
}

/**
 * How much wider a board grows, free to move, from one moisture to another: ΔD = D·C·(M₁ − M₀). Millimetres, below nought where it
 * shrinks. Glued, ribbed or cross-banded wood moves less and is strained instead.
 * @source FPL-190-13 eq. 13-2
 */
export function woodMovementOf({ species, direction, widthMm }: Board, { fromPct, toPct }: { readonly fromPct: Percent; readonly toPct: Percent }): Millimetres {
  return millimetres(widthMm * woodMovements[species][direction] * (toPct - fromPct));
}
