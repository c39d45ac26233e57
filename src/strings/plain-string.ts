import { steelWire } from '#materials';
import {
  type Gigapascals, type GramsPerMetre, type Hertz, type KilogramsPerCubicMetre, type KilogramsPerSecond, type Megapascals, type Millimetres, type Newtons, type Percent, type Ratio,
  hertz, kilogramsPerSecond, megapascals, newtons, percent, ratio,
} from '#units';
import { bendingStiffnessOf, sectionAreaMm2, wireDensityOf } from './section.ts';
import { type StrengthModel, wireStrengthOf } from './wire-strength.ts';

/** How many partials an operation lists. */
export const PARTIALS = 20;

export interface PlainString {
  /** Of partial 1. */
  readonly frequencyHz: Hertz;
  readonly speakingLengthMm: Millimetres;
  readonly diameterMm: Millimetres;
  readonly youngsModulusGPa?: Gigapascals;
  readonly densityKgM3?: KilogramsPerCubicMetre;
  readonly strengthModel?: StrengthModel | undefined;
  readonly certificateMPa?: Megapascals | undefined;
}

export interface PlainFigures {
  readonly linearDensityGPerM: GramsPerMetre;
  /** As of a perfectly flexible string. */
  readonly tensionN: Newtons;
  readonly stressMPa: Megapascals;
  readonly breakingPct: Percent;
  readonly inharmonicityB: Ratio;
  readonly impedanceKgPerS: KilogramsPerSecond;
  /** With which partial 1 of the stiff string, ends pinned, has the frequency. Not above nought: no tension makes so stiff a string sound so low. */
  readonly exactTensionN: Newtons;
  readonly exactInharmonicityB: Ratio;
  readonly strain: Ratio;
}

/**
 * Tension of a flexible string: T = 4·μ·L²·f². g/m, mm, Hz; N.
 * @source MERSENNE-1636
 */
export function flexibleTensionOf({ linearDensityGPerM, speakingLengthMm, frequencyHz }: { readonly linearDensityGPerM: GramsPerMetre; readonly speakingLengthMm: Millimetres; readonly frequencyHz: Hertz }): Newtons {
  return newtons(4 * (linearDensityGPerM * 1e-3) * (speakingLengthMm * 1e-3) ** 2 * frequencyHz ** 2);
}

/**
 * Inharmonicity of a uniform stiff string with pinned ends: B = π²·E·I/(T·L²), fₙ = n·f₀·√(1 + B·n²).
 * Clamped ends leave the ratios of the partials as they are and raise all of them by 1102·√B cents.
 * @source FLETCHER-1964
 */
export function inharmonicityOf({ bendingStiffnessNm2, tensionN, speakingLengthMm }: { readonly bendingStiffnessNm2: number; readonly tensionN: Newtons; readonly speakingLengthMm: Millimetres }): Ratio {
  return ratio((Math.PI ** 2 * bendingStiffnessNm2) / (tensionN * (speakingLengthMm * 1e-3) ** 2));
}

/**
 * The partials of a uniform stiff string, pinned, from its partial 1: fₙ = n·f₁·√((1 + B·n²)/(1 + B)), n = 1 … count. Hz.
 * @source FLETCHER-1964
 */
export function partialsOf({ frequencyHz, inharmonicityB, count = PARTIALS }: { readonly frequencyHz: Hertz; readonly inharmonicityB: Ratio; readonly count?: number }): readonly Hertz[] {
  return Array.from({ length: count }, (_, index) => hertz((index + 1) * frequencyHz * Math.sqrt((1 + inharmonicityB * (index + 1) ** 2) / (1 + inharmonicityB))));
}

/**
 * What a plain wire bears and sounds like at its pitch and length.
 * μ = ρ·π·d²/4; T = 4·μ·L²·f²; σ = T/A = ρ·(2·L·f)²: the stress does not know the gauge, so no other gauge relieves an
 * overstressed note; a move of the bridge, a wound string or another pitch does. Exact: T' = T − π²·E·I/L².
 * Ends pinned; ignores the give of bridge and air. @source FLETCHER-1964 @source MERSENNE-1636
 */
export function plainFiguresOf(wire: PlainString): PlainFigures {
  const { diameterMm, frequencyHz, speakingLengthMm, youngsModulusGPa = steelWire.youngsModulusGPa.value, densityKgM3 = steelWire.densityKgM3.value } = wire;
  const linearDensityGPerM = wireDensityOf({ diameterMm, densityKgM3 });
  const tensionN = flexibleTensionOf({ linearDensityGPerM, speakingLengthMm, frequencyHz });
  const stress = tensionN / sectionAreaMm2(diameterMm);
  const bendingStiffnessNm2 = bendingStiffnessOf({ diameterMm, youngsModulusGPa });
  const exactTensionN = newtons(tensionN - (Math.PI ** 2 * bendingStiffnessNm2) / (speakingLengthMm * 1e-3) ** 2);
  return {
    linearDensityGPerM,
    tensionN,
    stressMPa: megapascals(stress),
    breakingPct: percent((100 * stress) / wireStrengthOf(wire).tensileStrengthMPa),
    inharmonicityB: inharmonicityOf({ bendingStiffnessNm2, tensionN, speakingLengthMm }),
    impedanceKgPerS: impedanceOf(tensionN, linearDensityGPerM),
    exactTensionN,
    exactInharmonicityB: inharmonicityOf({ bendingStiffnessNm2, tensionN: exactTensionN, speakingLengthMm }),
    strain: ratio(stress / (youngsModulusGPa * 1e3)),
  };
}

/** Wave impedance of a string, Z = √(T·μ); kg/s. @source MERSENNE-1636 */
export function impedanceOf(tensionN: Newtons, linearDensityGPerM: GramsPerMetre): KilogramsPerSecond {
  return kilogramsPerSecond(Math.sqrt(tensionN * linearDensityGPerM * 1e-3));
}
