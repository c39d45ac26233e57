import { celsius, hours, percent } from '#units';
import { describe, expect, it } from 'vitest';
import { dewPointOf } from '../moist-air.ts';
import { restOfWarmingOf, unwrapAt } from '../season/rest-of-warming.ts';
import { floorLoadOf } from './floor-load.ts';
import { lifeUsedOf } from './life.ts';

const air = { temperatureC: celsius(21), humidityPct: percent(45) };

describe('a cold piano in a warm room', () => {
  it('waits as long as a body that warms exponentially needs', () => {
    const at = (elapsed: number): number => 21 - 19 * Math.exp(-elapsed / 30);
    const wait = restOfWarmingOf({ air, surfaceC: celsius(2), laterC: celsius(at(6)), betweenHours: hours(6) });
    expect(at(6 + (wait ?? 0))).toBeCloseTo(unwrapAt(air), 9);
    expect(unwrapAt(air) - dewPointOf(air)).toBe(3);
  });

  it('tells nothing of a surface that does not warm towards the air', () => {
    expect(restOfWarmingOf({ air, surfaceC: celsius(5), laterC: celsius(4), betweenHours: hours(2) })).toBeUndefined();
    expect(restOfWarmingOf({ air: { ...air, humidityPct: percent(95) }, surfaceC: celsius(2), laterC: celsius(6), betweenHours: hours(2) })).toBeUndefined();
    expect(restOfWarmingOf({ air, surfaceC: celsius(2), laterC: celsius(15), betweenHours: hours(2) })).toBe(0);
  });
});

describe('wear', () => {
  it('counts hours or years, by hand', () => {
    expect(lifeUsedOf({ by: 'hours', from: 2000, to: 4000 }, { dayCount: 700, hoursPerWeek: 10, intensity: 1 })).toEqual({ used: 1000, leastPct: 25, mostPct: 50, dueFromDays: 700, dueToDays: 2100 });
    expect(lifeUsedOf({ by: 'years', from: 20, to: 40 }, { dayCount: 3652.5, hoursPerWeek: 10, intensity: 2 })).toMatchObject({ used: 10, leastPct: 25, mostPct: 50 });
  });

  it('names no day where nothing is played', () => {
    expect(lifeUsedOf({ by: 'hours', from: 300, to: 500 }, { dayCount: 700, hoursPerWeek: 0, intensity: 1 })).toEqual({ used: 0, leastPct: 0, mostPct: 0 });
  });
});

it('loads the floor as 490 kg on three legs do: 1.60 kN a leg, worked by hand', () => {
  const load = floorLoadOf({ weightKg: 490, peopleKg: 0, legs: 3, heaviestPct: 100 / 3, areaM2: 4.9, footMm: 100 });
  expect(load.meanLegN / 1000).toBeCloseTo(1.602, 3);
  expect(load.heaviestLegN).toBeCloseTo(load.meanLegN, 9);
  expect(load.spreadKPa).toBeCloseTo(0.980665, 9);
  expect(load.footMPa).toBeCloseTo(0.20394, 4);
});
