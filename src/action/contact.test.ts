import { runOperation } from '#operation';
import { mustBe } from '#result';
import { degrees } from '#units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contactGeometryOperation, contactOf, leverShiftOperation, rollerArmOf, rollerSizeEffectOf, uprightTouchOperation } from './index.ts';
import { type Point, along, from, lengthOf, turnedAbout } from './plane.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Where a function passes nought, by halving; its sign at `low` and `high` differs. */
function rootOf(f: (x: number) => number, low: number, high: number): number {
  let [lo, hi] = [low, high];
  const rising = f(hi) > 0;
  for (let step = 0; step < 100; step += 1) {
    const middle = (lo + hi) / 2;
    if (f(middle) > 0 === rising) hi = middle;
    else lo = middle;
  }
  return (lo + hi) / 2;
}

describe('two levers that touch', () => {
  it('turn each other as two round faces held together do', () => {
    fc.assert(fc.property(between(-15, 15), between(70, 110), between(3, 20), between(3, 20), (height, normal, firstRadius, secondRadius) => {
      const [first, second, contact] = [{ xMm: 0, yMm: 0 }, { xMm: 180, yMm: 20 }, { xMm: 115, yMm: height }];
      const found = contactOf({ first, second, contact, normalDeg: degrees(normal) });
      if (found === undefined) return;
      const direction = { xMm: Math.cos((normal * Math.PI) / 180), yMm: Math.sin((normal * Math.PI) / 180) };
      const [one, two]: readonly [Point, Point] = [along(contact, direction, -firstRadius), along(contact, direction, secondRadius)];
      const turnOfSecond = (turn: number): number => rootOf((other) => lengthOf(from(turnedAbout(first, one, turn), turnedAbout(second, two, other))) - firstRadius - secondRadius, -0.02, 0.02);
      const step = 1e-4;
      expect(found.speedRatio).toBeCloseTo((turnOfSecond(step) - turnOfSecond(-step)) / (2 * step), 4);
      const apart = from(turnedAbout(first, contact, step), turnedAbout(second, contact, found.speedRatio * step));
      expect(found.slidingMm).toBeCloseTo(lengthOf(apart) / step, 1);
      if (found.pitchPoint !== undefined) expect(found.slidingMm).toBeCloseTo(Math.abs(found.speedRatio - 1) * lengthOf(from(found.pitchPoint, contact)), 9);
    }));
  });

  it('do not slide where the contact lies on the line of centres, whatever the faces', () => {
    fc.assert(fc.property(between(20, 160), between(0.1, 0.9), (normalDeg, share) => {
      const answer = mustBe(runOperation(contactGeometryOperation, { first: { xMm: 0, yMm: 0 }, second: { xMm: 180, yMm: 30 }, contact: { xMm: 180 * share, yMm: 30 * share }, normalDeg }));
      expect(answer.slidingMm).toBeCloseTo(0, 9);
    }));
  });

  it('refuse a force through the second centre', () => {
    expect(runOperation(contactGeometryOperation, { first: { xMm: 0, yMm: 0 }, second: { xMm: 100, yMm: 0 }, contact: { xMm: 50, yMm: 0 }, normalDeg: 0 })).toMatchObject({ ok: false, issues: [{ code: 'unsolvable', path: 'normalDeg' }] });
  });

  it('may have no pitch point', () => {
    const answer = mustBe(runOperation(contactGeometryOperation, { first: { xMm: 0, yMm: 0 }, second: { xMm: 100, yMm: 0 }, contact: { xMm: 50, yMm: 10 }, normalDeg: 0 }));
    expect(answer).toMatchObject({ pitchPoint: null, speedRatio: 1 });
  });
});

describe('moved contacts', () => {
  const levers = { keyFrontMm: 225, keyBackMm: 115, wippenHeelMm: 65, wippenJackMm: 96, rollerMm: 17, hammerMm: 130 };

  it('change the ratio as the lever product of the new arms', () => {
    const answer = mustBe(runOperation(leverShiftOperation, { levers, capstanTowardPlayerMm: 2, rollerOutMm: 1, jackFollows: true }));
    expect(answer.levers).toEqual({ ...levers, keyBackMm: 113, wippenHeelMm: 67, wippenJackMm: 95, rollerMm: 18 });
    expect(answer.actionRatio).toBeCloseTo((113 / 225) * (95 / 67) * (130 / 18), 12);
    expect(answer.actionRatioChangePct).toBeCloseTo(100 * ((113 * 95 * 65 * 17) / (67 * 18 * 115 * 96) - 1), 9);
    expect(mustBe(runOperation(leverShiftOperation, { levers })).actionRatioChangePct).toBe(0);
  });

  it('lift the hammer by a thicker roller as one that is laid on a still jack', () => {
    const top = -8;
    const shank = (radius: number): number => rootOf((angle) => 17 * Math.sin(angle) - radius - top, -0.5, 0.5);
    const lift = 130 * (Math.sin(shank(8 + 0.005)) - Math.sin(shank(8)));
    expect(rollerSizeEffectOf(levers as never, 0.01 as never).hammerLiftMm).toBeCloseTo(lift, 6);
  });

  it('shorten the roller’s arm as the shank rises', () => {
    const turn = 0.1;
    const lowest = turnedAbout({ xMm: 0, yMm: 0 }, { xMm: 17, yMm: -8 }, turn);
    expect(rollerArmOf({ rollerMm: 17 as never, depthMm: -8 as never, shankDeg: degrees((turn * 180) / Math.PI) })).toBeCloseTo(lowest.xMm, 12);
  });

  it.each([
    [{ capstanTowardPlayerMm: 115 }, ['range capstanTowardPlayerMm']],
    [{ capstanTowardPlayerMm: -65 }, ['range capstanTowardPlayerMm']],
    [{ rollerOutMm: -17 }, ['range rollerOutMm']],
    [{ rollerOutMm: 96, jackFollows: true }, ['range rollerOutMm']],
  ])('refuse %j', (shift, expected) => {
    const result = runOperation(leverShiftOperation, { levers, ...shift });
    expect(result.ok ? [] : result.issues.map(({ code, path }) => `${code} ${path}`)).toEqual(expected);
  });
});

describe('an upright key', () => {
  const key = { keyFrontMm: 225, keyBackMm: 99, wippenHeelMm: 60, wippenJackMm: 90, buttMm: 20, hammerMm: 142.9, wippenWeightG: 35, damperG: 12, springTorqueGMm: 60, hammerMassG: 8, tiltDeg: 15, frontWeightG: 2 };

  it('weighs what its parts gain in height over a small step of the key', () => {
    fc.assert(fc.property(between(-30, 60), between(0, 300), between(0, 40), (tiltDeg, springTorqueGMm, damperG) => {
      const { balanceWeightG, actionRatio, springG, hammerG, wippenG, damperShareG } = mustBe(runOperation(uprightTouchOperation, { ...key, tiltDeg, springTorqueGMm, damperG }));
      const step = 1e-4;
      const energy = (front: number): number => {
        const capstan = (front * 99) / 225;
        const hammer = (capstan / 60) * (90 / 20);
        return 35 * capstan + damperG * capstan + springTorqueGMm * hammer + 8 * 142.9 * Math.cos((tiltDeg * Math.PI) / 180 - hammer) - 2 * front;
      };
      expect(balanceWeightG).toBeCloseTo((energy(step) - energy(-step)) / (2 * step), 5);
      expect(actionRatio).toBeCloseTo((99 / 225) * (90 / 60) * (142.9 / 20), 12);
      expect(wippenG + damperShareG + springG + hammerG - 2).toBeCloseTo(balanceWeightG, 10);
    }));
  });
});
