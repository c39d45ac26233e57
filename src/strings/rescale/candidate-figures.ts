import { type Result, map, ok, refuse } from '#result';
import { FIT_PARTIALS } from '../inharmonicity-fit.ts';
import { type PlainString, impedanceOf, plainFiguresOf } from '../plain-string.ts';
import { tooStiff, woundFiguresOf } from '../wound-string.ts';
import type { CandidateFigures, RescaleCandidate, RescaleNote } from './problem.ts';

/**
 * What the objective knows of a candidate at its note: T as of a flexible string, B pinned (of a wound string fitted to
 * its exact partials), Z = √(T·μ) with that T. Refuses by field what cannot be wound and what is too stiff for its pitch.
 * @source MERSENNE-1636 @source FLETCHER-1964 @source WITTRICK-WILLIAMS-1971
 */
export function candidateFiguresOf({ frequencyHz, speakingLengthMm }: Pick<RescaleNote, 'frequencyHz' | 'speakingLengthMm'>, candidate: RescaleCandidate): Result<CandidateFigures> {
  if ('diameterMm' in candidate) return plainOf({ ...candidate, frequencyHz, speakingLengthMm });
  return map(woundFiguresOf({ ...candidate, frequencyHz, speakingLengthMm }, FIT_PARTIALS), ({ flexibleTensionN, breakingPct, inharmonicityB, linearDensityGPerM }) => ({
    tensionN: flexibleTensionN, breakingPct, inharmonicityB, impedanceKgPerS: impedanceOf(flexibleTensionN, linearDensityGPerM),
  }));
}

function plainOf(wire: PlainString): Result<CandidateFigures> {
  const { tensionN, breakingPct, inharmonicityB, impedanceKgPerS, exactTensionN } = plainFiguresOf(wire);
  return exactTensionN > 0 ? ok({ tensionN, breakingPct, inharmonicityB, impedanceKgPerS }) : refuse(tooStiff(wire.frequencyHz));
}

/**
 * Numbers for sizes: two candidates share one when their wires measure the same, whatever they are made of.
 * Plain sizes are even, wound ones odd, so that a change of kind can be told from a change of size.
 */
export function sizeNumbers(): (candidate: RescaleCandidate) => number {
  const known = new Map<string, number>();
  return (candidate) => {
    const name = nameOf(candidate);
    const number = known.get(name) ?? 2 * known.size + ('diameterMm' in candidate ? 0 : 1);
    known.set(name, number);
    return number;
  };
}

function nameOf(candidate: RescaleCandidate): string {
  if ('diameterMm' in candidate) return String(candidate.diameterMm);
  const { coreDiameterMm, coreShape = 'round' } = candidate;
  const outer = 'wraps' in candidate ? candidate.wraps.map(({ wireDiameterMm }) => wireDiameterMm).join('+') : `over ${String(candidate.overallDiameterMm)}`;
  return `${coreShape} ${String(coreDiameterMm)} ${outer}`;
}
