import { type Megapascals, type Millimetres, megapascals, millimetres } from '#units';

/** A row of a table of minimum and maximum tensile strength. */
export interface StrengthRow {
  readonly diameterMm: Millimetres;
  readonly minMPa: Megapascals;
  readonly maxMPa: Megapascals;
}

const MM_PER_INCH = 25.4;
/** One thousand pounds-force on a square inch, in megapascals. @source NIST-SP811 appendix B */
const MPA_PER_KSI = 6.894757293168361;

const A228 = [
  [0.028, 333, 368], [0.03, 330, 365], [0.032, 327, 361], [0.034, 324, 358], [0.038, 318, 352], [0.04, 315, 349], [0.042, 313, 346],
  [0.045, 309, 342], [0.048, 306, 339], [0.051, 303, 335], [0.055, 300, 331], [0.059, 296, 327], [0.063, 293, 324],
] as const;

const SM = [
  [0.7, 2090, 2350], [0.8, 2050, 2300], [0.9, 2010, 2260], [1, 1980, 2250], [1.1, 1950, 2190], [1.2, 1920, 2160], [1.3, 1900, 2130],
  [1.4, 1870, 2100], [1.5, 1850, 2080], [1.6, 1830, 2050],
] as const;

/** ASTM A228 tensile requirements from 0.028 to 0.063 inch, thin to stout. @source ASTM-A228 */
export const astmA228Strengths: readonly StrengthRow[] = A228.map(([inches, min, max]) => ({
  diameterMm: millimetres(inches * MM_PER_INCH), minMPa: megapascals(min * MPA_PER_KSI), maxMPa: megapascals(max * MPA_PER_KSI),
}));

/** EN 10270-1 class SM from 0.7 to 1.6 mm, thin to stout. @source EN-10270-1 */
export const en10270SmStrengths: readonly StrengthRow[] = SM.map(([diameter, min, max]) => ({
  diameterMm: millimetres(diameter), minMPa: megapascals(min), maxMPa: megapascals(max),
}));

/** S = A/dᵐ for music wire: 1.1 to 2.2 % above the A228 minimum, so not the careful choice. @source SHIGLEY-10-4 */
export const musicWirePowerLaw = { aMPa: megapascals(2211), exponent: 0.145 } as const;

/** Class SM as a formula, 1980 − 740·log₁₀ d in MPa: the table to its rounding from 0.7 to 1.6 mm. @source EN-10270-1 */
export const en10270SmFormula = { aMPa: megapascals(1980), perDecadeMPa: megapascals(740) } as const;
