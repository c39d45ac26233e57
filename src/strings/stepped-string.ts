import { type GramsPerMetre, type Hertz, type Millimetres, type NewtonSquareMetres, type Newtons, hertz, newtons } from '#units';
import { type StringEnds, countModes } from './mode-count.ts';
import { modeRootOf } from './mode-root.ts';
import type { StiffSegment } from './stiff-segment.ts';

/** A piece of a string with one weight and one stiffness. */
export interface StringSegment {
  readonly lengthMm: Millimetres;
  readonly linearDensityGPerM: GramsPerMetre;
  readonly bendingStiffnessNm2: NewtonSquareMetres;
}

export interface SteppedString extends StringEnds {
  readonly tensionN: Newtons;
  readonly segments: readonly StringSegment[];
}

/** Least stiffness a piece is reckoned with, as a share of T·L²: a limp piece moves partial 20 by 2e-10 of itself. */
const LEAST_STIFFNESS = 1e-13;

/**
 * The first partials of a string of uniform pieces, in Hz: exact for each piece, by the count of modes, none missed.
 * Deflection is small and sideways; shear, turning inertia and the give of the ends are left out; a wrap adds mass, and
 * stiffness only where the piece says so. Pieces above nought in length and mass, tension above nought.
 * Against the analytic stiff string 1e-10 of the frequency, and 1e-15·B/s³ more for a piece of the share s. @source WITTRICK-WILLIAMS-1971
 * @throws Error when a mode is not found: a broken invariant.
 */
export function steppedPartialsOf({ tensionN, segments, endStiffnessNm = 0 }: SteppedString, partials: number): readonly Hertz[] {
  const pieces = piecesOf(segments, tensionN);
  const transitS = pieces.reduce((sum, { lengthM, densityKgPerM }) => sum + lengthM * Math.sqrt(densityKgPerM / tensionN), 0);
  const apart = Math.PI / transitS;
  const found: Hertz[] = [];
  let low = apart * 1e-3;
  for (let n = 1; n <= partials; n += 1) {
    const angular = modeRootOf({ count: (x) => countModes(pieces, tensionN, x, { endStiffnessNm }), n, low, high: Math.max(low, (n - 0.4) * apart) + apart / 2 });
    if (angular === undefined) throw new Error(`partial ${String(n)} of a stepped string was not found`);
    found.push(hertz(angular / (2 * Math.PI)));
    low = angular;
  }
  return found;
}

/**
 * The tension with which partial 1 of a string of pieces has the frequency wanted; N.
 * Found at that one frequency by the count of modes over the tension. `guessN` starts the search, above nought.
 *
 * @returns `undefined` when the string is so stiff that no tension makes it sound so low.
 * @source WITTRICK-WILLIAMS-1971
 */
export function steppedTensionFor({ segments, frequencyHz, guessN }: { readonly segments: readonly StringSegment[]; readonly frequencyHz: Hertz; readonly guessN: Newtons }): Newtons | undefined {
  const pieces = piecesOf(segments, guessN);
  const angular = 2 * Math.PI * frequencyHz;
  const slackness = modeRootOf({ count: (x) => countModes(pieces, guessN / x, angular), n: 1, low: 1 / 16, high: 1 });
  return slackness === undefined || slackness > LOOSEST ? undefined : newtons(guessN / slackness);
}

/** A string with less than this part of the tension a flexible one would need is a bar, not a string. */
const LOOSEST = 1e6;

/** A piece shorter than this share of the string (a tenth of a micron in a metre) is given to the others: so stiff a piece would cost more digits than it moves. */
const NO_LENGTH = 1e-7;

/** The same pieces in SI units, together as long as before. */
function piecesOf(segments: readonly StringSegment[], tensionN: number): readonly StiffSegment[] {
  const lengthOf = (pieces: readonly StringSegment[]): number => pieces.reduce((sum, { lengthMm }) => sum + lengthMm * 1e-3, 0);
  const lengthM = lengthOf(segments);
  const kept = segments.filter(({ lengthMm }) => lengthMm * 1e-3 > NO_LENGTH * lengthM);
  const share = kept.length === segments.length ? 1 : lengthM / lengthOf(kept);
  const least = LEAST_STIFFNESS * tensionN * lengthM ** 2;
  return kept.map((segment) => ({
    lengthM: segment.lengthMm * 1e-3 * share,
    densityKgPerM: segment.linearDensityGPerM * 1e-3,
    bendingStiffnessNm2: Math.max(segment.bendingStiffnessNm2, least),
  }));
}
