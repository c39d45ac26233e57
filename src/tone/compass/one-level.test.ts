import { sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { diceOf, drawnSeed } from '../testing/dice.ts';
import { atOneLevel, laddersIn } from './one-level.ts';
import { softToLoudOf } from './soft-to-loud.ts';

const SLOPE_PER_DB = 0.05;
const ladder = (key: number, at40: number, slope = SLOPE_PER_DB) => [-46, -42, -38, -34, -30].map((levelDb) => ({ key, levelDb, brightness: at40 + slope * (levelDb + 40) }));

describe('keys brought to one level', () => {
  it('are read off their own line, or moved along the slope the others have, with the doubt that brings', () => {
    const strikes = [...ladder(20, 3, 0.04), ...ladder(30, 2.8, 0.05), ...ladder(40, 2.5, 0.06), { key: 35, levelDb: -34, brightness: 2.9, uncertainty: 0.03 }, { key: 36, levelDb: -37.5, brightness: 2.6 }, { key: 37, levelDb: -20, brightness: 4 }];
    const level = atOneLevel(strikes);
    if (typeof level === 'string') throw new Error(level);
    expect(level.atLevelDb).toBe(-38);
    expect(level.left).toEqual([37]);
    expect(level.keys.map(({ key, basis }) => [key, basis])).toEqual([[20, 'line'], [30, 'line'], [35, 'moved'], [36, 'as-struck'], [40, 'line']]);
    const moved = level.keys.find(({ key }) => key === 35);
    expect(moved?.brightness).toBeCloseTo(2.9 - 4 * 0.05, 10);
    // The median distance of the slopes 0.4, 0.5 and 0.6 per 10 dB from their median is 0.1; 1.4826 times that is their robust scatter.
    expect(moved?.uncertainty).toBeCloseTo(Math.hypot(0.03, 1.4826 * 0.1 * 0.4), 4);
    expect(level.keys.find(({ key }) => key === 36)?.brightness).toBe(2.6);
  });

  it('are not moved by the slopes of two keys alone', () => {
    const level = atOneLevel([...ladder(20, 3), ...ladder(30, 3), { key: 35, levelDb: -34, brightness: 2.9 }]);
    expect(level).toMatchObject({ left: [35] });
  });

  it('say why there is none', () => {
    expect(atOneLevel([{ key: 1, levelDb: -30, brightness: 2 }])).toBe('no-ladder');
    expect(atOneLevel([...ladder(20, 3), ...ladder(30, 3).map((strike) => ({ ...strike, levelDb: strike.levelDb + 40 }))])).toBe('levels-apart');
    expect(laddersIn([...ladder(20, 3), { key: 4, levelDb: -30, brightness: 2 }]).map(({ key }) => key)).toEqual([20, 20, 20, 20, 20]);
  });
});

it('says how well a strike repeats as simple-statistics does of what is left of known lines', () => {
  const seed = drawnSeed();
  const dice = diceOf(seed);
  const noise: number[] = [];
  const strikes = Array.from({ length: 40 }, (_, index) => index + 1).flatMap((key) => Array.from({ length: 12 }, (_, step) => {
    const off = 0.07 * dice.normal();
    noise.push(off);
    return { key, levelDb: -48 + 2 * step, brightness: 3 + 0.05 * step + off };
  }));
  const { repeatability = NaN, degreesOfFreedom } = softToLoudOf(strikes);
  expect(degreesOfFreedom).toBe(400);
  // Two parameters of each line are taken off by the degrees of freedom; of 400 the ratio of the two strays by a few hundredths.
  expect(Math.abs(repeatability / sampleStandardDeviation(noise) - 1), `seed ${String(seed)}`).toBeLessThan(0.1);
});
