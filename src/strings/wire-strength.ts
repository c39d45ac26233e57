import { type StrengthRow, astmA228Strengths, en10270SmFormula, en10270SmStrengths, musicWirePowerLaw } from '#materials';
import { type Megapascals, type Millimetres, type Newtons, megapascals, newtons } from '#units';

/** Where a minimum strength is taken from. */
export const strengthModels = ['astm-a228-min', 'en-10270-1-sm', 'power-law'] as const;
export type StrengthModel = (typeof strengthModels)[number];

/** What a strength in fact rests on: outside a table a law stands in for it. */
export const strengthBases = ['certificate', 'table', 'law'] as const;
export type StrengthBasis = (typeof strengthBases)[number];

export interface WireStrengthQuestion {
  readonly diameterMm: Millimetres;
  readonly strengthModel?: StrengthModel | undefined;
  /** A maker's certificate or a test break; it wins over every table. */
  readonly certificateMPa?: Megapascals | undefined;
}

export interface WireStrength {
  readonly tensileStrengthMPa: Megapascals;
  readonly breakingLoadN: Newtons;
  readonly basis: StrengthBasis;
}

/**
 * The least strength a wire of this diameter should have, and the load that breaks it.
 * Tables: linear in diameter between rows. Outside the A228 table the power law S = A/dᵐ stands in (1 to 2 % above the
 * table where both exist), outside the SM table its formula 1980 − 740·log₁₀ d. F = S·π·d²/4; MPa, mm, N.
 * Real music wire is usually stronger than any minimum; corrosion and bends make old wire weaker, which no table knows.
 * @source ASTM-A228 @source EN-10270-1 @source SHIGLEY-10-4
 */
export function wireStrengthOf({ diameterMm, strengthModel = 'astm-a228-min', certificateMPa }: WireStrengthQuestion): WireStrength {
  const [strength, basis] = certificateMPa === undefined ? minimumOf(diameterMm, strengthModel) : [certificateMPa, 'certificate' as const];
  return { tensileStrengthMPa: megapascals(strength), breakingLoadN: newtons((strength * Math.PI * diameterMm ** 2) / 4), basis };
}

function minimumOf(diameterMm: number, model: StrengthModel): readonly [number, StrengthBasis] {
  if (model === 'power-law') return [powerLaw(diameterMm), 'law'];
  const table = model === 'astm-a228-min' ? astmA228Strengths : en10270SmStrengths;
  const found = between(table, diameterMm);
  if (found !== undefined) return [found, 'table'];
  return [model === 'astm-a228-min' ? powerLaw(diameterMm) : smFormula(diameterMm), 'law'];
}

const powerLaw = (diameterMm: number): number => musicWirePowerLaw.aMPa / diameterMm ** musicWirePowerLaw.exponent;
const smFormula = (diameterMm: number): number => en10270SmFormula.aMPa - en10270SmFormula.perDecadeMPa * Math.log10(diameterMm);

/** Straight line between the rows either side, or `undefined` outside the table. A billionth of slack keeps an inch figure on its own row. */
function between(table: readonly StrengthRow[], diameterMm: number): number | undefined {
  const slack = 1e-9 * diameterMm;
  const upper = table.findIndex((row) => row.diameterMm >= diameterMm - slack);
  const [above, below] = [table[upper], table[Math.max(0, upper - 1)]];
  if (above === undefined || below === undefined || (upper === 0 && diameterMm < above.diameterMm - slack)) return undefined;
  if (above === below) return above.minMPa;
  const share = (diameterMm - below.diameterMm) / (above.diameterMm - below.diameterMm);
  return below.minMPa + Math.min(share, 1) * (above.minMPa - below.minMPa);
}
