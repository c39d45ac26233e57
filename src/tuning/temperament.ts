import { type PitchClass, type TemperamentName, pitchClasses } from '#instrument';
import { sumOf } from '#numerics';
import { type Cents, cents } from '#units';
import { type TemperedFifth, temperaments } from './temperaments.ts';

/** Twelve fifths over seven octaves: 1200·log₂(3¹²/2¹⁹). */
export const PYTHAGOREAN_COMMA_CENTS = 1200 * (12 * Math.log2(3) - 19);
/** Four fifths over a pure third and two octaves: 1200·log₂(81/80). */
export const SYNTONIC_COMMA_CENTS = 1200 * Math.log2(81 / 80);
const PURE_FIFTH_CENTS = 1200 * Math.log2(3 / 2);
const PURE_THIRD_CENTS = 1200 * Math.log2(5 / 4);

const A = 9;
/** Steps of a fifth and a third in semitones, and the place of the fifth that closes the circle. */
const [FIFTH, THIRD, CLOSING] = [7, 4, 8];

/** One note of a temperament; intervals upward from it. */
export interface TemperedNote {
  readonly note: PitchClass;
  /** Above C. */
  readonly fromCCents: Cents;
  /** Off equal temperament when both have the same A. */
  readonly offsetCents: Cents;
  /** Fifth upward, wide of 3:2; below nought where it is narrow. */
  readonly fifthCents: Cents;
  /** Major third upward, wide of 5:4. */
  readonly thirdCents: Cents;
}

const narrowing = ({ pythagorean = 0, syntonic = 0 }: TemperedFifth): number => pythagorean * PYTHAGOREAN_COMMA_CENTS + syntonic * SYNTONIC_COMMA_CENTS;
const within = (value: number): number => value - 1200 * Math.floor(value / 1200);

/** Cents above the note the circle begins on, by semitone: eight fifths upward from it, three downward. */
function circleOf(fifths: readonly TemperedFifth[]): readonly number[] {
  const width = fifths.map((fifth) => PURE_FIFTH_CENTS - narrowing(fifth));
  const heights = Array.from({ length: 12 }, (_, place) =>
    within(place <= CLOSING ? sumOf(width.slice(0, place)) : -sumOf(width.slice(place))));
  return Array.from({ length: 12 }, (_, semitone) => heights[(semitone * FIFTH) % 12] ?? Number.NaN);
}

/**
 * The twelve notes of a temperament from its fifths, each 3:2 less its part of a comma. `root` is the note its circle begins
 * on, C as published. Cents.
 * @source OWN the walk; each temperament names its own source
 */
export function temperedNotesOf(name: TemperamentName, root: PitchClass = 'C'): readonly TemperedNote[] {
  const circle = circleOf(temperaments[name].fifths);
  const shift = pitchClasses.indexOf(root);
  const heights = Array.from({ length: 12 }, (_, note) => circle[(note - shift + 12) % 12] ?? Number.NaN);
  const at = (note: number): number => heights[note % 12] ?? Number.NaN;
  const interval = (from: number, steps: number): number => within(at(from + steps) - at(from));
  return pitchClasses.map((note, index) => ({
    note,
    fromCCents: cents(within(at(index) - at(0))),
    offsetCents: cents(at(index) - 100 * index - (at(A) - 100 * A) - 1200 * Math.round((at(index) - 100 * index - at(A) + 100 * A) / 1200)),
    fifthCents: cents(interval(index, FIFTH) - PURE_FIFTH_CENTS),
    thirdCents: cents(interval(index, THIRD) - PURE_THIRD_CENTS),
  }));
}

/** How far each note lies off equal temperament with the same A, by its number above C. Cents. @source OWN */
export function temperamentOffsetsOf(name: TemperamentName, root: PitchClass = 'C'): readonly Cents[] {
  return temperedNotesOf(name, root).map(({ offsetCents }) => offsetCents);
}
