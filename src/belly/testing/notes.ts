import { type BearingNote } from '../bearing.ts';
import { millimetres, newtons } from '#units';
import fc from 'fast-check';

/** A number of a range, ends included. */
export const within = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

/** Any note of a piano, its three heights within the given distance of the datum. */
export const anyNote = (heightMm: number): fc.Arbitrary<BearingNote> => fc.record({
  tensionN: within(300, 1500).map(newtons),
  strings: fc.integer({ min: 1, max: 3 }),
  speakingLengthMm: within(50, 2000).map(millimetres),
  backLengthMm: within(30, 300).map(millimetres),
  frontHeightMm: within(-heightMm, heightMm).map(millimetres),
  bridgeHeightMm: within(-heightMm, heightMm).map(millimetres),
  rearHeightMm: within(-heightMm, heightMm).map(millimetres),
});
