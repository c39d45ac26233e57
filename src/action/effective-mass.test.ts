import { runOperation } from '#operation';
import { mustBe } from '#result';
import { degrees } from '#units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contactOf, dynamicTouchOperation, effectiveMassOperation } from './index.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const levers = { keyFrontMm: 225, keyBackMm: 115, wippenHeelMm: 65, wippenJackMm: 96, rollerMm: 17, hammerMm: 130 };
const action = {
  levers, keyMassG: 60, keyFrontLengthMm: 238, keyBackLengthMm: 170, keyWidthMm: 13, leads: [{ diameterMm: 12.7, positionMm: 170 }, { diameterMm: 9.5, positionMm: -60 }],
  wippenInertiaGMm2: 64_700, hammerHeadG: 7.8, shankG: 2.4, shankLengthMm: 136,
};

/** Σ m·v² of an even bar turning with the speed 1 about a point `front` from one end and `back` from the other. */
function barEnergy(massG: number, front: number, back: number): number {
  const pieces = 20_000;
  const step = (front + back) / pieces;
  return Array.from({ length: pieces }, (_, index) => ((massG / pieces) * ((index + 0.5) * step - back) ** 2)).reduce((sum, each) => sum + each, 0);
}

describe('effective mass', () => {
  it('is the energy of all parts at one speed of the key front', () => {
    const level = degrees(90);
    const wippenSpeed = contactOf({ first: { xMm: 0, yMm: 0 }, second: { xMm: 180, yMm: 0 }, contact: { xMm: 115, yMm: 0 }, normalDeg: level })?.speedRatio ?? 0;
    const hammerSpeed = wippenSpeed * (contactOf({ first: { xMm: 180, yMm: 0 }, second: { xMm: 67, yMm: 0 }, contact: { xMm: 84, yMm: 0 }, normalDeg: level })?.speedRatio ?? 0);
    const mustEqual = mustBe(runOperation(effectiveMassOperation, action));
    const leadMass = (d: number) => 0.01089 * Math.PI * 0.25 * d ** 2 * 13;
    const key = barEnergy(60, 238, 170) + leadMass(12.7) * (170 ** 2 + 12.7 ** 2 / 8) + leadMass(9.5) * (60 ** 2 + 9.5 ** 2 / 8);
    expect(mustEqual.keyG).toBeCloseTo(key / 225 ** 2, 4);
    expect(mustEqual.wippenG).toBeCloseTo((64_700 * wippenSpeed ** 2) / 225 ** 2, 9);
    expect(mustEqual.hammerG).toBeCloseTo(((7.8 * 130 ** 2 + barEnergy(2.4, 136, 0)) * hammerSpeed ** 2) / 225 ** 2, 4);
    expect(mustEqual.effectiveMassG).toBe(mustEqual.keyG + mustEqual.wippenG + mustEqual.hammerG);
    expect(mustEqual.hammerWeightG).toBeCloseTo(7.8 + (2.4 * 68) / 130, 12);
  });

  it('goes with the square of the ratio where the hammer sits', () => {
    fc.assert(fc.property(between(0.8, 1.2), (factor) => {
      const [one, other] = [action, { ...action, levers: { ...levers, rollerMm: 17 / factor } }].map((input) => mustBe(runOperation(effectiveMassOperation, input)));
      expect((other?.hammerG ?? 0) / (one?.hammerG ?? 1)).toBeCloseTo(factor ** 2, 10);
    }));
  });

  it('refuses a lead off the key', () => {
    expect(runOperation(effectiveMassOperation, { ...action, leads: [{ diameterMm: 12.7, positionMm: 235 }] })).toMatchObject({ ok: false, issues: [{ path: 'leads[0].positionMm', params: { byMm: expect.closeTo(3.35, 9) } }] });
  });
});

describe('force and return', () => {
  const touch = { balanceWeightG: 37.5, frictionG: 11.5, effectiveMassG: 330, dipMm: 10, strokeMs: 25 };

  /** Milliseconds until a mass has gone a way, the acceleration laid on step by step. */
  function timeTo(wayMm: number, accelerationMmPerMs2: number): number {
    const step = 0.001;
    let [way, speed, time] = [0, 0, 0];
    while (way < wayMm) {
      way += (speed + (accelerationMmPerMs2 * step) / 2) * step;
      speed += accelerationMmPerMs2 * step;
      time += step;
    }
    return time;
  }

  it('brings the key down in the time asked, followed step by step', () => {
    const { forceN, inertialShare } = mustBe(runOperation(dynamicTouchOperation, touch));
    const weightN = (49 * 9.80665) / 1000;
    expect(timeTo(10, (forceN - weightN) / 330)).toBeCloseTo(25, 2);
    expect(inertialShare).toBeCloseTo(1 - weightN / forceN, 12);
  });

  it('comes back in the time told, followed step by step', () => {
    fc.assert(fc.property(between(20, 60), between(0, 15), between(150, 500), between(5, 12), (balanceWeightG, frictionG, effectiveMassG, dipMm) => {
      const { returnMs } = mustBe(runOperation(dynamicTouchOperation, { ...touch, balanceWeightG, frictionG, effectiveMassG, dipMm }));
      expect(returnMs).toBeCloseTo(timeTo(dipMm, ((balanceWeightG - frictionG) * 9.80665) / effectiveMassG / 1000), 1);
    }), { numRuns: 20 });
  });

  it('stays down where friction holds it', () => {
    for (const frictionG of [37.5, 40]) expect(mustBe(runOperation(dynamicTouchOperation, { ...touch, frictionG }))).toMatchObject({ returnMs: null, forceN: expect.any(Number) });
  });
});
