import { steelWire } from '#materials';
import { type Issue, type Result, andThen, ok, refuse } from '#result';
import {
  type Gigapascals, type GramsPerMetre, type Hertz, type KilogramsPerSecond, type Megapascals, type Millimetres, type Newtons, type Percent, type Ratio,
  megapascals, millimetres, percent, ratio,
} from '#units';
import { FIT_PARTIALS, fittedInharmonicityOf } from './inharmonicity-fit.ts';
import { PARTIALS, flexibleTensionOf, impedanceOf, inharmonicityOf, partialsOf } from './plain-string.ts';
import { bendingStiffnessOf, sectionAreaMm2 } from './section.ts';
import { type StringSegment, steppedPartialsOf, steppedTensionFor } from './stepped-string.ts';
import { type Winding, type WindingFigures, windingFiguresOf } from './winding.ts';
import { type StrengthModel, wireStrengthOf } from './wire-strength.ts';

/** Where the wrap leaves the core bare, and how much further only the first wrap reaches; front is the tuning pin's side. */
export interface WoundEnds {
  readonly bareFrontMm?: Millimetres;
  readonly bareRearMm?: Millimetres;
  readonly stepFrontMm?: Millimetres;
  readonly stepRearMm?: Millimetres;
}

export type WoundString = Winding & WoundEnds & {
  /** Of partial 1. */
  readonly frequencyHz: Hertz;
  readonly speakingLengthMm: Millimetres;
  readonly youngsModulusGPa?: Gigapascals;
  readonly strengthModel?: StrengthModel | undefined;
  readonly certificateMPa?: Megapascals | undefined;
};

export interface WoundFigures {
  readonly linearDensityGPerM: GramsPerMetre;
  readonly overallDiameterMm: Millimetres;
  /** With which partial 1 has the frequency, exact. */
  readonly tensionN: Newtons;
  /** As of a flexible string wound from end to end. */
  readonly flexibleTensionN: Newtons;
  /** In the core. */
  readonly stressMPa: Megapascals;
  readonly breakingPct: Percent;
  readonly impedanceKgPerS: KilogramsPerSecond;
  readonly partialsHz: readonly Hertz[];
  readonly inharmonicityB: Ratio;
  /** Partials the inharmonicity is fitted to. */
  readonly fitPartials: number;
  /** What one would reckon with if the wrap ran from end to end. */
  readonly coreOnlyInharmonicityB: Ratio;
  /** Core and bare ends to first order; for short bare ends. */
  readonly firstOrderInharmonicityB: Ratio;
}

/**
 * A wound string at its pitch and length: exact tension, partials and inharmonicity, with bare ends and first-wrap steps.
 * The core alone bears the tension and bends; the wrap adds mass only (winding stiffens a little, and much less than
 * touching coils would). Ignoring bare ends is wrong by 30 to 240 per cent in B.
 * First order: B = B_core + (2π²/(3·μ·L³))·[(μ − μ_c)·Σa³ + (μ − μ₁)·Σ((a + s)³ − a³)], a bare, s step, μ_c core, μ₁ with
 * the first wrap. Refuses ends that leave no winding, steps without a second wrap, and a string too stiff for its pitch.
 * @source WITTRICK-WILLIAMS-1971 @source FLETCHER-1964 @source OWN first order by Rayleigh
 */
export function woundFiguresOf(string: WoundString, partials: number = PARTIALS): Result<WoundFigures> {
  return andThen(windingFiguresOf(string), (winding) => {
    const faults = endFaults(string);
    return faults.length > 0 ? refuse(...faults) : figuresOf(string, winding, partials);
  });
}

function figuresOf(string: WoundString, winding: WindingFigures, partials: number): Result<WoundFigures> {
  const { coreDiameterMm, coreShape = 'round', frequencyHz, speakingLengthMm, youngsModulusGPa = steelWire.youngsModulusGPa.value } = string;
  const { linearDensityGPerM, overallDiameterMm } = winding;
  const flexibleTensionN = flexibleTensionOf({ linearDensityGPerM, speakingLengthMm, frequencyHz });
  const bendingStiffnessNm2 = bendingStiffnessOf({ diameterMm: coreDiameterMm, shape: coreShape, youngsModulusGPa });
  const segments = segmentsOf(string, winding, bendingStiffnessNm2);
  const tensionN = steppedTensionFor({ segments, frequencyHz, guessN: flexibleTensionN });
  if (tensionN === undefined) return refuse(tooStiff(frequencyHz));
  const coreOnly = inharmonicityOf({ bendingStiffnessNm2, tensionN, speakingLengthMm });
  const partialsHz = segments.length === 1
    ? partialsOf({ frequencyHz, inharmonicityB: coreOnly, count: Math.max(partials, FIT_PARTIALS) })
    : steppedPartialsOf({ tensionN, segments }, Math.max(partials, FIT_PARTIALS));
  const stress = tensionN / sectionAreaMm2(coreDiameterMm, coreShape);
  return ok({
    linearDensityGPerM,
    overallDiameterMm,
    tensionN,
    flexibleTensionN,
    stressMPa: megapascals(stress),
    breakingPct: percent((100 * stress) / wireStrengthOf({ ...string, diameterMm: coreDiameterMm }).tensileStrengthMPa),
    impedanceKgPerS: impedanceOf(tensionN, linearDensityGPerM),
    partialsHz: partialsHz.slice(0, partials),
    inharmonicityB: fittedInharmonicityOf(partialsHz.slice(0, FIT_PARTIALS)),
    fitPartials: FIT_PARTIALS,
    coreOnlyInharmonicityB: coreOnly,
    firstOrderInharmonicityB: ratio(coreOnly + stepInharmonicityOf(string, winding)),
  });
}

/** The issue of a string so stiff that no tension makes its partial 1 so low. */
export const tooStiff = (frequencyHz: Hertz): Issue => ({ code: 'unsolvable', path: 'frequencyHz', given: frequencyHz, allowed: 'a higher pitch, a longer or a thinner string: this one is so stiff that it sounds higher with no tension at all', params: { reason: 'tooStiff' } });

function segmentsOf(string: WoundString, winding: WindingFigures, bendingStiffnessNm2: StringSegment['bendingStiffnessNm2']): readonly StringSegment[] {
  const { bareFront, bareRear, stepFront, stepRear } = endsOf(string);
  const middle = string.speakingLengthMm - bareFront - bareRear - stepFront - stepRear;
  const pieces = [
    [bareFront, winding.coreDensityGPerM], [stepFront, winding.firstWrapDensityGPerM], [middle, winding.linearDensityGPerM],
    [stepRear, winding.firstWrapDensityGPerM], [bareRear, winding.coreDensityGPerM],
  ] as const;
  return pieces.filter(([length]) => length > 0).map(([length, linearDensityGPerM]) => ({ lengthMm: millimetres(length), linearDensityGPerM, bendingStiffnessNm2 }));
}

const endsOf = ({ bareFrontMm = millimetres(0), bareRearMm = millimetres(0), stepFrontMm = millimetres(0), stepRearMm = millimetres(0) }: WoundEnds) => ({ bareFront: bareFrontMm, bareRear: bareRearMm, stepFront: stepFrontMm, stepRear: stepRearMm });

/** The share of the bare ends and steps in B, to first order. */
function stepInharmonicityOf(string: WoundString, winding: WindingFigures): number {
  const { bareFront, bareRear, stepFront, stepRear } = endsOf(string);
  const [full, core, first] = [winding.linearDensityGPerM, winding.coreDensityGPerM, winding.firstWrapDensityGPerM];
  const bare = bareFront ** 3 + bareRear ** 3;
  const stepped = (bareFront + stepFront) ** 3 + (bareRear + stepRear) ** 3 - bare;
  return ((2 * Math.PI ** 2) / (3 * full * string.speakingLengthMm ** 3)) * ((full - core) * bare + (full - first) * stepped);
}

function endFaults(string: WoundString): readonly Issue[] {
  const { bareFront, bareRear, stepFront, stepRear } = endsOf(string);
  const given = { bareFrontMm: bareFront, bareRearMm: bareRear, stepFrontMm: stepFront, stepRearMm: stepRear };
  const { speakingLengthMm } = string;
  if (bareFront + bareRear + stepFront + stepRear >= speakingLengthMm) {
    return Object.entries(given).filter(([, length]) => length > 0).map(([path, length]) => ({
      code: 'range', path, given: length, allowed: `ends that together stay below the speaking length, ${String(speakingLengthMm)}`, params: { reason: 'endsTooLong', below: speakingLengthMm },
    }));
  }
  const single = 'wraps' in string ? string.wraps.length < 2 : true;
  const steps = single ? Object.entries({ stepFrontMm: stepFront, stepRearMm: stepRear }).filter(([, length]) => length > 0) : [];
  return steps.map(([path, length]) => ({ code: 'range', path, given: length, allowed: '0 unless there is a second wrap, given by its wire', params: { reason: 'stepWithoutSecondWrap' } }));
}
