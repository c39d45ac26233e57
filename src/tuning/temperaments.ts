import type { TemperamentName } from '#instrument';

/** A fifth narrower than 3:2 by parts of the Pythagorean and of the syntonic comma. */
export interface TemperedFifth {
  readonly pythagorean?: number;
  readonly syntonic?: number;
}

/** A temperament as it was published: which fifths of the circle are tempered, and by what part of which comma. */
export interface Temperament {
  readonly source: string;
  /** Twelve fifths upward: C–G, G–D, D–A, A–E, E–B, B–F♯, F♯–C♯, C♯–G♯, G♯–E♭, E♭–B♭, B♭–F, F–C. The ninth closes the circle. */
  readonly fifths: readonly TemperedFifth[];
}

const pure: TemperedFifth = {};
const byPythagorean = (part: number): TemperedFifth => ({ pythagorean: part });
const bySyntonic = (part: number): TemperedFifth => ({ syntonic: part });
const times = (count: number, fifth: TemperedFifth): readonly TemperedFifth[] => Array.from({ length: count }, () => fifth);

/** Eleven fifths alike; what is left of the comma falls to G♯–E♭: Pythagorean − 11 parts of the syntonic comma. */
const meantone = (part: number): readonly TemperedFifth[] => [...times(8, bySyntonic(part)), { pythagorean: 1, syntonic: -11 * part }, ...times(3, bySyntonic(part))];

/** Temperaments by their published definitions, each named by what it is. */
export const temperaments = {
  equal: { source: 'PRACTICE', fifths: times(12, byPythagorean(1 / 12)) },
  pythagorean: { source: 'BOETHIUS', fifths: [...times(8, pure), byPythagorean(1), ...times(3, pure)] },
  meantoneQuarter: { source: 'AARON-1523', fifths: meantone(1 / 4) },
  meantoneSixth: { source: 'PRACTICE', fifths: meantone(1 / 6) },
  well1691: { source: 'WERCKMEISTER-1691', fifths: [...times(3, byPythagorean(1 / 4)), pure, pure, byPythagorean(1 / 4), ...times(6, pure)] },
  /** The schisma is the Pythagorean less the syntonic comma. */
  well1779Pure: { source: 'KIRNBERGER-1779', fifths: [...times(4, bySyntonic(1 / 4)), pure, pure, { pythagorean: 1, syntonic: -1 }, ...times(5, pure)] },
  well1779Sixths: { source: 'VALLOTTI-1779', fifths: [...times(5, byPythagorean(1 / 6)), ...times(6, pure), byPythagorean(1 / 6)] },
  well1800: { source: 'YOUNG-1800', fifths: [...times(6, byPythagorean(1 / 6)), ...times(6, pure)] },
} as const satisfies Readonly<Record<TemperamentName, Temperament>>;
