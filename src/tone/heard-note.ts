import type { Samples } from '#numerics';
import type { PartialFrequency } from './stiff-law.ts';

/** A partial by its number, and where it stands. */
export type PartialPlace = Pick<PartialFrequency, 'n' | 'frequencyHz'>;

/** A note found in a sound: where it begins, its pitch and its partials. What is measured of tone starts from here. */
export interface HeardNote {
  readonly samples: Samples;
  readonly onsetS: number;
  /** Where the note ends at the latest; the end of the sound when absent. */
  readonly endS?: number;
  readonly f0Hz: number;
  /** In rising order. */
  readonly partials: readonly PartialPlace[];
}

/** A figure that is not given, and why. `found` and `needed` are of one unit, that of the reason. */
export interface Refusal {
  readonly figure: string;
  readonly reason: RefusalReason;
  readonly found?: number;
  readonly needed?: number;
}

/**
 * Why a figure is not given:
 * `short-range` too few decibels of decay stand over noise and end of the recording (dB);
 * `short-late` too few decibels of the late decay do (dB); `one-stage` one slope explains the decay as well as two;
 * `not-straight` the late decay follows no straight line (R²);
 * `no-partials` nothing to sum up; `few-partials` fewer partials than the figure needs (count);
 * `above-range` and `below-range` the pitch is above or below where the figure means anything (Hz); `in-noise` the band stands too little over the noise (dB);
 * `short-sound` the sound is shorter than the window (s); `narrow-band` the sampling rate is too low for the band (Hz);
 * `few-strikes` a line through fewer strikes says nothing (count); `short-levels` the strikes are too much of one loudness (dB); `levels-apart` the level is not held by all (dB).
 */
export type RefusalReason = (typeof refusalReasons)[number];

/** All reasons, for schemas and texts. */
export const refusalReasons = ['short-range', 'short-late', 'one-stage', 'not-straight', 'no-partials', 'few-partials', 'above-range', 'below-range', 'in-noise', 'short-sound', 'narrow-band', 'few-strikes', 'short-levels', 'levels-apart'] as const;
