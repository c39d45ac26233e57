import type { PlainString } from '../plain-string.ts';
import type { WoundString } from '../wound-string.ts';
import type { Hertz, KilogramsPerSecond, Millimetres, Newtons, Percent, Ratio } from '#units';

/** A string as it could be made for a note: all of it but pitch and length, which the note gives. */
export type RescaleCandidate = Sized<PlainString> | Sized<WoundString>;
type Sized<Wire> = Wire extends unknown ? Omit<Wire, 'frequencyHz' | 'speakingLengthMm'> : never;

/** How much each part of the objective weighs; what is not given weighs nothing. */
export interface RescaleWeights {
  readonly tensionSmoothness?: number;
  readonly inharmonicitySmoothness?: number;
  readonly impedanceSmoothness?: number;
  readonly sizeChange?: number;
  readonly tensionDeviation?: number;
}

/** What a string of a note must keep to. Tension as of a flexible string, of one string. */
export interface StringLimits {
  readonly minBreakingPct?: Percent | undefined;
  readonly maxBreakingPct?: Percent | undefined;
  readonly minTensionN?: Newtons | undefined;
  readonly maxTensionN?: Newtons | undefined;
}

export interface RescaleLimits extends StringLimits {
  /** Load of all strings together, held to 0.1 %. */
  readonly totalTensionN?: Newtons | undefined;
  /** Most that all strings together may pull. */
  readonly maxTotalTensionN?: Newtons | undefined;
}

export interface RescaleNote {
  readonly key: number;
  readonly frequencyHz: Hertz;
  readonly speakingLengthMm: Millimetres;
  /** In the unison. */
  readonly strings?: number;
  readonly targetTensionN?: Newtons | undefined;
  readonly candidates: readonly RescaleCandidate[];
  /** Index of the one candidate that is kept. */
  readonly lockedCandidate?: number | undefined;
  /** Win over the limits and weights of the whole. A weight belongs to the terms that end at this note from below. */
  readonly limits?: StringLimits | undefined;
  readonly weights?: RescaleWeights | undefined;
}

/** A row of notes, lowest first and none left out, with what each could be strung with. */
export interface RescaleProblem {
  readonly notes: readonly RescaleNote[];
  readonly weights: RescaleWeights;
  readonly limits?: RescaleLimits | undefined;
}

/** What the objective knows of a candidate at its note. */
export interface CandidateFigures {
  /** As of a flexible string. */
  readonly tensionN: Newtons;
  readonly breakingPct: Percent;
  /** Pinned; of a wound string the exact fit. */
  readonly inharmonicityB: Ratio;
  /** Of one string, with the flexible tension. */
  readonly impedanceKgPerS: KilogramsPerSecond;
}

export interface RescaleChoice extends CandidateFigures {
  readonly key: number;
  readonly candidateIndex: number;
}

/** Limits by name, as `activeLimits` tells them; a lock is one of them. */
export const limitNames = ['minBreakingPct', 'maxBreakingPct', 'minTensionN', 'maxTensionN', 'lockedCandidate', 'totalTensionN', 'maxTotalTensionN'] as const;
export type LimitName = (typeof limitNames)[number];

/** A limit without which another choice would serve better; the keys where a change of that note alone would, none for a total. */
export interface ActiveLimit {
  readonly limit: LimitName;
  readonly keys: readonly number[];
}

export interface Rescaled {
  readonly choices: readonly RescaleChoice[];
  readonly objective: number;
  /** No choice within the limits has a lower objective. */
  readonly lowerBound: number;
  /** Whether objective and bound lie within 0.1 %. */
  readonly proven: boolean;
  readonly totalTensionN: Newtons;
  readonly activeLimits: readonly ActiveLimit[];
}

/** How far a rescale has come. */
export interface RescaleProgress {
  readonly phase: 'figures' | 'optimum' | 'load' | 'proof';
  /** Share of the phase that is done, where that is known. */
  readonly share: Ratio;
  /** The best choice within the limits so far, with the bound so far. */
  readonly best?: Rescaled | undefined;
}

/** Gap between objective and bound, as a share of the objective, up to which a choice counts as proven. */
export const PROVEN_GAP = 1e-3;

/** How closely a total that is to be held is held, as a share of it. */
export const TOTAL_TOLERANCE = 1e-3;
