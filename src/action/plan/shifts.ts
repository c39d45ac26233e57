import { type Grams, type GramsPerCubicMillimetre, type Millimetres, type Percent, type Ratio, grams, millimetres, percent } from '#units';
import type { KeyTopChange } from '../key-top.ts';
import { shiftedLeversOf } from '../lever-shift.ts';
import { type LeverRatios, type Levers, leverRatiosOf } from '../levers.ts';

/** What is changed on every key alike. */
export interface PlanShifts {
  /** Roller away from the hammer centre; the jack stays where it is. */
  readonly rollerOutMm: Millimetres;
  /** Capstan line away from the player. */
  readonly capstanAwayMm: Millimetres;
  /** Bore longer by. */
  readonly boreMm: Millimetres;
  /** Hammers heavier by grams, then by per cent. */
  readonly hammerG: Grams;
  readonly hammerPct: Percent;
  readonly top?: Omit<KeyTopChange, 'keyEdgeMm' | 'keyFrontMm' | 'woodDensityGPerMm3'> & { readonly woodDensityGPerMm3: GramsPerCubicMillimetre };
}

/** Everything left as it is. */
export const NO_SHIFTS: PlanShifts = { rollerOutMm: millimetres(0), capstanAwayMm: millimetres(0), boreMm: millimetres(0), hammerG: grams(0), hammerPct: percent(0) };

/** Levers with roller and capstan moved, their ratios, and what that makes of the ratio of the action: new over old. */
export interface ShiftedLevers extends LeverRatios {
  readonly levers: Levers;
  readonly change: Ratio;
}

/**
 * Levers after the shifts. r + p, b + c, w_c − c; p roller away from the hammer centre, c capstan away from the player, mm.
 * Small shifts with all contacts on one level. Arms that would vanish are for the caller to refuse: see {@link leastArmOf}.
 * @source OWN
 */
export function shiftedBy(levers: Levers, { rollerOutMm, capstanAwayMm }: PlanShifts): ShiftedLevers {
  const moved = shiftedLeversOf(levers, { rollerOutMm, capstanTowardPlayerMm: millimetres(0 - capstanAwayMm), jackFollows: false });
  const ratios = leverRatiosOf(moved);
  return { ...ratios, levers: moved, change: (ratios.actionRatio / leverRatiosOf(levers).actionRatio) as Ratio };
}

/** The shortest arm that is left after the shifts, mm: nought or less and the geometry is none. */
export function leastArmOf(levers: Levers, shifts: PlanShifts): Millimetres {
  return millimetres(Math.min(levers.rollerMm + shifts.rollerOutMm, levers.keyBackMm + shifts.capstanAwayMm, levers.wippenHeelMm - shifts.capstanAwayMm));
}

/** Hammer weight after the shifts: (SW + g)·(1 + p/100), grams. @source OWN */
export function shiftedHammerOf(hammerWeightG: Grams, { hammerG, hammerPct }: Pick<PlanShifts, 'hammerG' | 'hammerPct'>): Grams {
  return grams((hammerWeightG + hammerG) * (1 + hammerPct / 100));
}
