import { PitchDetector } from 'pitchy';
import { describe, expect, it } from 'vitest';
import { missOf, noteOfKey, testDice } from './testing/compass-note.ts';

const SIZE = 8192;
const centsBetween = (fromHz: number, toHz: number): number => 1200 * Math.log2(toHz / fromHz);

/** A general library that reads a pitch off the period of a wave (McLeod's method): what one would otherwise reach for. */
describe('beside a general library that reads the period', () => {
  it.each([13, 25, 37, 49, 61])('key %i is found by both, and a stiff string read by its period comes out sharp where the law does not', (key) => {
    const { dice, said } = testDice();
    const made = noteOfKey(dice, key, { snrDb: 60 });
    const [channel = new Float64Array()] = made.samples.channels;
    const from = Math.round((made.onsetS + 0.1) * made.samples.sampleRateHz);
    const [periodHz] = PitchDetector.forFloat64Array(SIZE).findPitch(channel.subarray(from, from + SIZE), made.samples.sampleRateHz);
    expect(Math.abs(centsBetween(made.f0Hz, periodHz)), said).toBeLessThan(50);
    expect(centsBetween(made.f0Hz, periodHz), said).toBeGreaterThan(0.5);
    expect(Math.abs(missOf(made)?.cents ?? Infinity), said).toBeLessThan(0.05);
  });
});
