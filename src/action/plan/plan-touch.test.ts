import { grams, gramSquareMillimetres, gramsPerCubicMillimetre, millimetres, percent, ratio, squareMillimetres } from '#units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { balanceFromPartsOf } from '../parts.ts';
import { planFiguresOf } from './figures.ts';
import { plannedHammersOf } from './hammers.ts';
import type { PlanKey } from './plan-key.ts';
import { planTouch } from './plan-touch.ts';
import { foremostOf, frontReachOf } from './reach.ts';
import { NO_SHIFTS, type PlanShifts } from './shifts.ts';

/** The natural of the handbook's worked example: 225/115/65/96/17/130. */
const natural: PlanKey = {
  key: 40, colour: 'natural', asked: { even: 'balanceWeight', targetG: grams(37.5), upWeightMinG: grams(20) }, found: { frontWeightG: grams(25) },
  hammerWeightG: grams(9), wippenWeightG: grams(18), springG: grams(0), frictionG: grams(11.5),
  levers: { keyFrontMm: millimetres(225), keyBackMm: millimetres(115), wippenHeelMm: millimetres(65), wippenJackMm: millimetres(96), rollerMm: millimetres(17), hammerMm: millimetres(130) },
  weightRatio: ratio(5.7725), distanceRatio: ratio(5.7725),
  regulation: { blowMm: millimetres(45), letOffMm: millimetres(1.5), dipMm: millimetres(10), aftertouchMm: millimetres(1), lossMm: millimetres(0.3), keyEdgeMm: millimetres(238) },
};
const shift = (part: Partial<PlanShifts>): PlanShifts => ({ ...NO_SHIFTS, ...part });

describe('strokes of one key', () => {
  const heavy = { ...natural, inertia: { keyGMm2: gramSquareMillimetres(30 * 225 ** 2), wippenGMm2: gramSquareMillimetres(0), shankG: grams(0.001), shankLengthMm: millimetres(120) }, regulation: { ...mustHave(natural.regulation), keyEdgeMm: millimetres(225) } };

  it('takes 96 % of a hard stroke and 35 % of a soft one to set 330 g moving, and is back in 0.161 s at 26 g: worked figures of the handbook', () => {
    const { mass, strokes } = planFiguresOf({ ...heavy, hammerWeightG: grams(9.003) }, NO_SHIFTS);
    // 30 g of key and 9.003 g on the square of 5.7725: 330 g.
    expect(mass?.effectiveMassG).toBeCloseTo(330, 0);
    expect([strokes?.softN.toFixed(2), strokes?.hardN.toFixed(1), ((strokes?.returnMs ?? 0) / 1000).toFixed(3)]).toEqual(['0.74', '11.0', '0.161']);
  });

  it('are left out where mass or dip is not known, and the return where the key stays down', () => {
    expect(planFiguresOf(natural, NO_SHIFTS).strokes).toBeUndefined();
    expect(planFiguresOf({ ...heavy, frictionG: grams(40) }, NO_SHIFTS).strokes).not.toHaveProperty('returnMs');
  });
});

function mustHave<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('nothing there');
  return value;
}

describe('shifts on one key', () => {
  it.each([
    ['roller in by 1 mm', { rollerOutMm: millimetres(-1) }, 6.13, 3.2],
    ['roller out by 1 mm', { rollerOutMm: millimetres(1) }, 5.45, -2.9],
    ['capstan line 2 mm toward the player', { capstanAwayMm: millimetres(-2) }, 5.5, undefined],
    ['capstan line 2 mm toward the back', { capstanAwayMm: millimetres(2) }, 6.06, undefined],
  ] as const)('%s gives the ratio worked by hand from the six arms', (_, part, expected, balanceChange) => {
    const [before, after] = [planFiguresOf(natural, NO_SHIFTS), planFiguresOf(natural, shift(part))];
    expect(after.distanceRatio).toBeCloseTo(expected, 2);
    expect(after.weightRatio / before.weightRatio).toBeCloseTo(after.distanceRatio / before.distanceRatio, 12);
    if (balanceChange !== undefined) expect((after.standing?.balanceWeightG ?? 0) - (before.standing?.balanceWeightG ?? 0)).toBeCloseTo(balanceChange, 1);
  });

  it('a hammer half a gram lighter lets the down weight fall by 2.9 g, as half a gram reshaped off does', () => {
    const [before, after] = [planFiguresOf(natural, NO_SHIFTS), planFiguresOf(natural, shift({ hammerG: grams(-0.5) }))];
    expect((after.standing?.downWeightG ?? 0) - (before.standing?.downWeightG ?? 0)).toBeCloseTo(-2.9, 1);
    expect(before.frontWeightG - after.frontWeightG).toBeCloseTo(2.9, 1);
  });

  it('new key tops, planed, add 0.56 g of front weight and no level; unplaned 1.64 g and 1.3 mm', () => {
    const top = {
      oldThicknessMm: millimetres(1), oldDensityGPerMm3: gramsPerCubicMillimetre(0.00185), newThicknessMm: millimetres(2.3), newDensityGPerMm3: gramsPerCubicMillimetre(0.00119),
      areaMm2: squareMillimetres(2400), centroidMm: millimetres(27), woodDensityGPerMm3: gramsPerCubicMillimetre(0.0005),
    };
    const planed = planFiguresOf(natural, shift({ top: { ...top, planedMm: millimetres(1.3) } }));
    const left = planFiguresOf(natural, shift({ top: { ...top, planedMm: millimetres(0) } }));
    expect([planed.top?.levelChangeMm, left.top?.levelChangeMm]).toEqual([expect.closeTo(0, 9), expect.closeTo(1.3, 9)]);
    expect((left.standingFrontG ?? 0) - (planed.standingFrontG ?? 0)).toBeCloseTo((2400 * 1.3 * 0.0005 * (238 - 27)) / 225, 9);
    // The needed front weight is that of the whole key: what the tops add, leads need not.
    expect(left.frontWeightG).toBe(planed.frontWeightG);
  });

  it('a longer bore stands nearer to the string, and the same dip then leaves more aftertouch', () => {
    const [before, after] = [planFiguresOf(natural, NO_SHIFTS).regulation, planFiguresOf(natural, shift({ boreMm: millimetres(1) })).regulation];
    expect(after?.blowMm).toBe(44);
    expect((after?.aftertouchMm ?? 0) - (before?.aftertouchMm ?? 0)).toBeCloseTo((1 / 5.7725) * (238 / 225), 6);
  });

  it('the effective mass of the hammer goes with the square of the ratio', () => {
    const heavy: PlanKey = { ...natural, inertia: { keyGMm2: gramSquareMillimetres(1.5e6), wippenGMm2: gramSquareMillimetres(65000), shankG: grams(2), shankLengthMm: millimetres(125) } };
    const [before, after] = [planFiguresOf(heavy, NO_SHIFTS), planFiguresOf(heavy, shift({ rollerOutMm: millimetres(1) }))];
    expect((after.mass?.hammerG ?? 0) / (before.mass?.hammerG ?? 1)).toBeCloseTo((17 / 18) ** 2, 6);
  });
});

describe('a planned key', () => {
  it('shows what was asked once leaded as told, whatever is shifted', () => {
    const some = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(fc.property(some(-2, 2), some(-4, 4), some(-1, 1), some(-10, 10), fc.constantFrom('balanceWeight', 'downWeight'), (roller, capstan, hammer, pct, even) => {
      const key: PlanKey = { ...natural, asked: { ...natural.asked, even } };
      const figures = planFiguresOf(key, shift({ rollerOutMm: millimetres(roller), capstanAwayMm: millimetres(capstan), hammerG: grams(hammer), hammerPct: percent(pct) }));
      const balance = balanceFromPartsOf({ ...key, ...figures, helperSpringG: key.springG, actionRatio: figures.weightRatio });
      expect(balance + (even === 'downWeight' ? 11.5 : 0)).toBeCloseTo(37.5, 9);
    }));
  });

  it('names what cannot be reached, and by how much', () => {
    const [one] = planTouch([{ ...natural, frictionG: grams(30), reach: { leastG: grams(0), mostG: grams(20) }, mostFrontWeightG: grams(22) }], NO_SHIFTS);
    const needed = 5.7725 * 9 + (115 / 225) * 18 - 37.5;
    expect(one?.figures.frontWeightG).toBeCloseTo(needed, 9);
    expect(one?.frontWeightChangeG).toBeCloseTo(needed - 25, 9);
    expect(one?.flags).toEqual([{ name: 'aboveReach', byG: expect.closeTo(needed - 20, 9) }, { name: 'aboveLimit', byG: expect.closeTo(needed - 22, 9) }, { name: 'upWeightLow', byG: expect.closeTo(12.5, 9) }]);
  });
});

describe('the reach of leads', () => {
  const bed = { keyWidthMm: millimetres(13), leadDensityGPerMm3: gramsPerCubicMillimetre(0.01134), woodDensityGPerMm3: gramsPerCubicMillimetre(0.00045) };
  const allowance = { ...bed, bareFrontWeightG: grams(2), keyFrontMm: millimetres(225), keyFrontLengthMm: millimetres(238), drillMm: millimetres(12.7), gapMm: millimetres(3), keepOuts: [{ fromMm: millimetres(200), toMm: millimetres(212) }] };

  it('is met by no other places of as many leads, tried at every half millimetre', () => {
    for (const mostLeads of [1, 2]) {
      const { mostG } = frontReachOf({ ...allowance, mostLeads });
      const grid = Array.from({ length: 471 }, (_, index) => index / 2).filter((x) => x + 6.35 <= 235 && (x + 6.35 <= 200 || x - 6.35 >= 212));
      const mass = (0.01089 * Math.PI * 12.7 ** 2 * 13) / 4;
      const best = mostLeads === 1 ? Math.max(...grid) : Math.max(...grid.flatMap((x) => grid.filter((y) => y <= x - 15.7).map((y) => x + y)));
      expect(mostG).toBeGreaterThanOrEqual(2 + (mass * best) / 225 - 1e-9);
      expect(mostG).toBeLessThanOrEqual(2 + (mass * (best + 0.5 * mostLeads)) / 225);
    }
  });

  it('ends where the key is full', () => {
    expect(foremostOf({ ...allowance, mostLeads: 99 })).toHaveLength(14);
  });
});

describe('planned hammers', () => {
  const found = Array.from({ length: 88 }, (_, index) => (index === 30 ? null : grams(11 - 0.06 * index + (index % 2) * 0.2)));

  it('keep the level of the measured set when smoothed, section by section, and bridge its gap', () => {
    const smoothed = plannedHammersOf({ after: 'smoothed', lambda: 1e3, sections: [{ firstKey: 1, lastKey: 26 }, { firstKey: 27, lastKey: 88 }] }, found);
    expect(smoothed.ok && smoothed.value.every((weight, index) => Math.abs((weight ?? 0) - (11.1 - 0.06 * index)) < 0.12)).toBe(true);
  });

  it('refuse anchors that rise, with the key where they do', () => {
    const anchors = [{ key: 1, weightG: grams(9) }, { key: 44, weightG: grams(9.5) }, { key: 88, weightG: grams(5) }] as const;
    expect(plannedHammersOf({ after: 'anchors', anchors }, found)).toMatchObject({ ok: false, issues: [{ path: 'anchors', params: { key: 2 } }] });
  });
});
