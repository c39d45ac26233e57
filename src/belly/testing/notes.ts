import { type Millimetres, millimetres, newtons } from '#units';
import fc from 'fast-check';
import type { BearingNote } from '../bearing.ts';

/** A number of a range, ends included. */
export const within = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

/** A height, never minus nought. */
const height = (most: number): fc.Arbitrary<Millimetres> => within(-most, most).map((value) => millimetres(value + 0));

/** Any note of a piano, its three heights within the given distance of the datum. */
export const anyNote = (heightMm: number): fc.Arbitrary<BearingNote> => fc.record({
  tensionN: within(300, 1500).map(newtons),
  strings: fc.integer({ min: 1, max: 3 }),
  speakingLengthMm: within(50, 2000).map(millimetres),
  backLengthMm: within(30, 300).map(millimetres),
  frontHeightMm: height(heightMm),
  bridgeHeightMm: height(heightMm),
  rearHeightMm: height(heightMm),
});
