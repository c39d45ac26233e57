import { describe, expect, it } from 'vitest';
import { publishedSoundFigures } from './published.ts';
import { steadyLoudnessOf } from './loudness.ts';
import { sharpnessAt, sharpnessOf } from './sharpness.ts';

describe('figures of the standards', () => {
  it.each(publishedSoundFigures.map((figure) => [`${figure.source}, ${figure.place}: ${figure.what}, ${figure.given}`, figure] as const))('%s', (_, { expected, tolerance, found }) => {
    expect(Math.abs(found() - expected)).toBeLessThanOrEqual(tolerance);
  });
});

it('loudness grows with level, and nothing heard is no loudness', () => {
  const at = (levelDb: number): number => steadyLoudnessOf(Array.from({ length: 28 }, () => levelDb)).sone;
  const levels = Array.from({ length: 60 }, (_, index) => at(index * 2 - 20));
  for (const [index, sone] of levels.entries()) expect(sone).toBeGreaterThanOrEqual(levels[index - 1] ?? 0);
  expect(at(-60)).toBe(0);
  expect(sharpnessOf(steadyLoudnessOf(Array.from({ length: 28 }, () => -60)))).toBe(0);
});

it('the samples of the pattern hold its area', () => {
  const { sone, specific } = steadyLoudnessOf(Array.from({ length: 28 }, (_, index) => 70 - index));
  expect(specific.reduce((sum, value) => sum + 0.1 * value, 0) / sone).toBeCloseTo(1, 1);
});

it('gain cancels', () => {
  const powers = Array.from({ length: 28 }, (_, index) => 2 ** -index);
  expect(sharpnessAt(powers.map((power) => power / 5000), 2 / 5000)).toBeCloseTo(sharpnessAt(powers, 2), 12);
});
