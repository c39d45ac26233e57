import { woodMoistureOf } from '#materials';
import { celsius, percent } from '#units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AirAt, laggedMoistureOf } from './lagged-moisture.ts';
import { lineThrough, seasonFitOf } from './season-fit.ts';
import { climateSpanOf } from './span.ts';
import { type HumidityAt, watchOf } from './watch.ts';

describe('a line through figures', () => {
  it('is none where nothing varies or too little is there', () => {
    expect(lineThrough([8, 8, 8, 8], [1, 2, 3, 4])).toBeUndefined();
    expect(lineThrough([8, 9], [1, 2])).toBeUndefined();
  });
});

const year: readonly AirAt[] = Array.from({ length: 366 }, (_, dayCount) => ({ dayCount, temperatureC: celsius(20), humidityPct: percent(50 - 15 * Math.cos((2 * Math.PI * dayCount) / 365)) }));

describe('moisture that follows behind the air', () => {
  it('comes within a hundredth of steady air after five time constants, from either side', () => {
    for (const [from, to] of [[30, 60], [60, 30]] as const) {
      const air = Array.from({ length: 120 }, (_, index): AirAt => ({ dayCount: index - 40, temperatureC: celsius(20), humidityPct: percent(index < 40 ? from : to) }));
      const followed = laggedMoistureOf(air, 10);
      const [before, after] = [from, to].map((humidityPct) => woodMoistureOf({ temperatureC: celsius(20), humidityPct: percent(humidityPct) }));
      // One time constant after the step the closed form has 1 − 1/e of the way behind it: the old air is held until day 0.
      expect(followed.find(({ dayCount }) => dayCount === 10)?.moisturePct).toBeCloseTo((after ?? 0) + ((before ?? 0) - (after ?? 0)) * Math.exp(-1), 9);
      expect(Math.abs((followed.find(({ dayCount }) => dayCount === 50)?.moisturePct ?? 0) - (after ?? 0))).toBeLessThan(0.01 * Math.abs((after ?? 0) - (before ?? 0)));
    }
  });

  it('never leaves the range of the steady moistures', () => {
    fc.assert(fc.property(fc.array(fc.double({ min: 5, max: 95, noNaN: true }), { minLength: 2, maxLength: 40 }), fc.double({ min: 0, max: 60, noNaN: true }), (humidities, lagDays) => {
      const air = humidities.map((humidityPct, dayCount): AirAt => ({ dayCount, temperatureC: celsius(20), humidityPct: percent(humidityPct) }));
      const steady = laggedMoistureOf(air, 0).map(({ moisturePct }) => moisturePct);
      for (const { moisturePct } of laggedMoistureOf(air, lagDays)) {
        expect(moisturePct).toBeGreaterThanOrEqual(Math.min(...steady) - 1e-9);
        expect(moisturePct).toBeLessThanOrEqual(Math.max(...steady) + 1e-9);
      }
    }));
  });
});

describe('a figure with the season', () => {
  it('finds slope and lag a figure was made with', () => {
    const series = new Map(laggedMoistureOf(year, 30).map(({ dayCount, moisturePct }) => [dayCount, moisturePct]));
    const observed = [10, 60, 100, 150, 200, 250, 300, 350].map((dayCount) => ({ dayCount, value: -20 + 2.5 * (series.get(dayCount) ?? 0) }));
    const fit = seasonFitOf(year, observed, [0, 7, 30, 90]);
    expect(fit?.lagDays).toBe(30);
    expect(fit?.slope).toBeCloseTo(2.5, 9);
    expect(fit?.intercept).toBeCloseTo(-20, 8);
  });

  it('takes changes since another day as changes of moisture', () => {
    const series = new Map(laggedMoistureOf(year, 7).map(({ dayCount, moisturePct }) => [dayCount, moisturePct]));
    const observed = [[60, 10], [100, 60], [150, 100], [200, 100], [300, 200], [350, 200]].map(([dayCount = 0, sinceDayCount = 0]) => ({ dayCount, sinceDayCount, value: -1 + 3 * ((series.get(dayCount) ?? 0) - (series.get(sinceDayCount) ?? 0)) }));
    const fit = seasonFitOf(year, observed, [7]);
    expect(fit?.slope).toBeCloseTo(3, 9);
    expect(fit?.intercept).toBeCloseTo(-1, 9);
  });
});

const band = { lowPct: percent(35), highPct: percent(65), dayChangePct: percent(10) };
const log = (humidities: readonly number[], step = 1): readonly HumidityAt[] => humidities.map((humidityPct, index) => ({ hourCount: index * step, humidityPct: percent(humidityPct) }));

describe('the watch over a log', () => {
  it('tells stretches outside the band with their worst, by hand', () => {
    const watch = watchOf(log([40, 34, 33, 36, 34]), { ...band, dayChangePct: percent(50) });
    expect(watch).toMatchObject({ hours: 5, dryHours: 3, dampHours: 0, fastHours: 0 });
    expect(watch.alarms).toEqual([{ what: 'dry', fromHourCount: 1, toHourCount: 2, worstPct: 33 }, { what: 'dry', fromHourCount: 4, toHourCount: 4, worstPct: 34 }]);
  });

  it('ends a stretch at a hole in the log', () => {
    expect(watchOf(log([70, 71, 72], 8), { ...band, dayChangePct: percent(50) }).alarms).toHaveLength(3);
  });

  it('finds the same changes within a day as comparing every pair', () => {
    fc.assert(fc.property(fc.array(fc.double({ min: 10, max: 90, noNaN: true }), { minLength: 1, maxLength: 80 }), fc.integer({ min: 1, max: 30 }), (humidities, step) => {
      const own = log(humidities, step);
      const fast = own.filter((at) => {
        const day = own.filter(({ hourCount }) => hourCount <= at.hourCount && at.hourCount - hourCount <= 24).map(({ humidityPct }) => humidityPct);
        return Math.max(...day) - Math.min(...day) > band.dayChangePct;
      });
      expect(watchOf(own, band).fastHours).toBe(fast.length);
    }));
  });
});

describe('the span of a log', () => {
  it('has the ends and the mean of what was read, and leaves the temperature out where none was', () => {
    const read = [[30, 18], [50, null], [40, 22]] as const;
    const log = read.map(([humidityPct, temperatureC], dayCount) => ({ dayCount, humidityPct: percent(humidityPct), temperatureC: temperatureC === null ? null : celsius(temperatureC) }));
    expect(climateSpanOf(log, 0)).toMatchObject({ humidity: { least: 30, mean: 40, most: 50 }, temperature: { least: 18, mean: 20, most: 22 }, moisture: { least: woodMoistureOf({ temperatureC: celsius(18), humidityPct: percent(30) }), most: woodMoistureOf({ temperatureC: celsius(20), humidityPct: percent(50) }) } });
    expect(climateSpanOf(log.map((at) => ({ ...at, temperatureC: null })), 0)).not.toHaveProperty('temperature');
    expect(climateSpanOf([], 14)).toBeUndefined();
  });

  it('says in what humidity 86 of 100 readings lay, whatever the ends did', () => {
    const log = Array.from({ length: 101 }, (_, index) => ({ dayCount: index, temperatureC: null, humidityPct: percent(index === 100 ? 99 : 30 + ((37 * index) % 101) / 5) }));
    const [low, high] = climateSpanOf(log, 0)?.usual ?? [];
    const inside = log.filter(({ humidityPct }) => humidityPct >= (low ?? 100) && humidityPct <= (high ?? 0));
    expect(inside).toHaveLength(87);
    expect(climateSpanOf(log.slice(0, 1), 0)?.usual).toEqual([30, 30]);
  });
});
