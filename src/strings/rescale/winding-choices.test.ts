import { mustBe } from '#result';
import { hertz, millimetres, percent } from '#units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roughnessOf, windingChoicesFor, windingsOf, woundFiguresOf } from '../index.ts';

const cores = [0.8, 0.9, 1, 1.1, 1.2, 1.3].map((mm) => ({ diameterMm: millimetres(mm), shape: 'round' as const }));
const wraps = Array.from({ length: 12 }, (_, place) => ({ wireDiameterMm: millimetres(Number((0.3 + place * 0.1).toFixed(1))) }));
const windings = windingsOf({ cores, wraps, layers: 'either' });
const note = { frequencyHz: hertz(55), speakingLengthMm: millimetres(1180) };

describe('windings to choose among', () => {
  it('are every core with every wrap and every pair that does not thicken inwards: 6·(12 + 78)', () => {
    expect(windings).toHaveLength(6 * (12 + 78));
    expect(windings.every(({ wraps: [inner, outer] }) => outer === undefined || (inner?.wireDiameterMm ?? 0) <= outer.wireDiameterMm)).toBe(true);
    expect(windingsOf({ cores, wraps, layers: 'single' })).toHaveLength(72);
  });

  it('weigh and break as the wound string itself says', () => {
    const winding = windings[100];
    const figures = mustBe(woundFiguresOf({ ...note, coreDiameterMm: winding?.core.diameterMm ?? millimetres(1), wraps: winding?.wraps ?? [] }, 1));
    expect(winding?.linearDensityGPerM).toBeCloseTo(figures.linearDensityGPerM, 12);
    expect((100 * figures.tensionN) / (winding?.breakingLoadN ?? 1)).toBeCloseTo(figures.breakingPct, 9);
  });

  it('lie within the limits, are no more than asked, and leave no wide gap of tension', () => {
    fc.assert(fc.property(fc.integer({ min: 2, max: 120 }), (most) => {
      const chosen = windingChoicesFor(windings, { ...note, minBreakingPct: percent(30), maxBreakingPct: percent(65), most });
      expect(chosen.length).toBeGreaterThan(0);
      expect(chosen.length).toBeLessThanOrEqual(most);
      expect(new Set(chosen).size).toBe(chosen.length);
      const logs = chosen.map(({ linearDensityGPerM }) => Math.log(linearDensityGPerM)).toSorted((a, b) => a - b);
      const whole = windingChoicesFor(windings, { ...note, minBreakingPct: percent(30), maxBreakingPct: percent(65), most: 1e6 }).map(({ linearDensityGPerM }) => Math.log(linearDensityGPerM)).toSorted((a, b) => a - b);
      const [low = 0, high = 0] = [whole[0], whole.at(-1)];
      const gapOf = (list: readonly number[]): number => Math.max(...list.map((value, place) => value - (list[place - 1] ?? value)));
      // Each stretch that holds any has one: two chosen lie at most two stretches apart, or as far as those of the stock do.
      expect(gapOf(logs)).toBeLessThan(2 * ((high - low) / most) + gapOf(whole) + 1e-12);
    }), { numRuns: 40 });
  });

  it('where none keeps the limits are those that miss by least', () => {
    const chosen = windingChoicesFor(windings, { ...note, minBreakingPct: percent(99), maxBreakingPct: percent(99.5), most: 3 });
    expect(chosen).toHaveLength(3);
  });
});

describe('roughness', () => {
  it('is nought on a geometric row, and by hand (ln 1.01 once up, once twice down, once up) elsewhere', () => {
    expect(roughnessOf([100, 110, 121, 133.1])).toBeCloseTo(0, 12);
    expect(roughnessOf([100, 100, 101, 100, 100])).toBeCloseTo(Math.sqrt((Math.log(1.01) ** 2 * (1 + 4 + 1)) / 3), 12);
    expect(roughnessOf([1, 2, undefined, 4])).toBeUndefined();
  });

  it('does not know units', () => {
    fc.assert(fc.property(fc.array(fc.double({ min: 1, max: 1000, noNaN: true }), { minLength: 3, maxLength: 20 }), fc.double({ min: 0.01, max: 100, noNaN: true }), (values, factor) => {
      expect(roughnessOf(values.map((value) => factor * value))).toBeCloseTo(roughnessOf(values) ?? Number.NaN, 8);
    }));
  });
});

describe('roughness over a break', () => {
  it('leaves out what ends at the two notes above it', () => {
    const jump = [100, 100, 200, 200, 200];
    expect(roughnessOf(jump, new Set([2, 3]))).toBe(0);
    expect(roughnessOf(jump)).toBeCloseTo(Math.sqrt((2 * Math.log(2) ** 2) / 3), 12);
  });
});
