import { runOperation } from '#operation';
import { mustBe } from '#result';
import { createSay, explainIssue, languages } from '#text';
import { describe, expect, it } from 'vitest';
import { actionStrokeOperation } from '../index.ts';
import { benchActionWith } from '../testing/bench-action.ts';
import { circlesMeet, turnToMeet } from './meet.ts';

type Spot = { readonly xMm: number; readonly yMm: number };
const length = (a: Spot, b: Spot): number => Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm);
const offLine = (spot: Spot, { from: a, to: b }: { readonly from: Spot; readonly to: Spot }): number =>
  ((b.xMm - a.xMm) * (spot.yMm - a.yMm) - (b.yMm - a.yMm) * (spot.xMm - a.xMm)) / length(a, b);

const answer = (changed: Parameters<typeof benchActionWith>[0] = {}, positions = 41) => mustBe(runOperation(actionStrokeOperation, { ...benchActionWith(changed), positions }));

describe('the drawing of an action', () => {
  it.each([['with a jack', {}], ['without', { jack: undefined }]])('keeps every part its size and lets faces touch, %s', (_, changed) => {
    const { positions, buttonHeightMm } = answer(changed);
    const [first] = positions;
    for (const { segments, circles, phase, hammerToStringMm } of positions) {
      const segment = (part: string) => segments.find((each) => each.part === part) ?? { from: { xMm: NaN, yMm: NaN }, to: { xMm: NaN, yMm: NaN } };
      const circle = (part: string) => circles.find((each) => each.part === part) ?? { centre: { xMm: NaN, yMm: NaN }, radiusMm: NaN };
      for (const part of ['key', 'capstan', 'shank', 'head'] as const) {
        const at = first?.segments.find((each) => each.part === part);
        expect(length(segment(part).from, segment(part).to)).toBeCloseTo(at === undefined ? NaN : length(at.from, at.to), 9);
      }
      expect(192 - segment('head').to.yMm).toBeCloseTo(hammerToStringMm, 9);
      expect(length(segment('head').from, segment('head').to)).toBeCloseTo(50, 9);
      expect(Math.abs(offLine(circle('capstan').centre, segment('heel')))).toBeCloseTo(6, 9);
      if (phase !== 'free') expect(offLine(circle('roller').centre, segment('jackTop'))).toBeCloseTo(5, 9);
      if (phase === 'tripping') expect(segment('toe').to.yMm).toBeCloseTo(buttonHeightMm ?? NaN, 9);
    }
  });
});

describe('parts that do not meet', () => {
  const refused = (changed: Parameters<typeof benchActionWith>[0]) => {
    const result = runOperation(actionStrokeOperation, { ...benchActionWith(changed), positions: 5 });
    return result.ok ? [] : result.issues;
  };

  it.each([
    [{ stringHeightMm: 600 }, 'stringMissed', 'stringHeightMm'],
    [{ letOffMm: 45 }, 'letOffAboveBlow', 'letOffMm'],
    [{ keyEdgeMm: 220 }, 'edgeBehindPoint', 'keyEdgeMm'],
    [{ hammerCentreHeightMm: 192 }, 'centreAboveString', 'hammerCentreHeightMm'],
    [{ jack: { heightMm: 52, toeMm: 25, overlapMm: 40 } }, 'toeMissed', 'jack.overlapMm'],
    [{ levers: { ...benchActionWith().levers, keyBackMm: 0.5 } }, 'capstanMissed', 'capstanHeightMm'],
    [{ jackTopHeightMm: 400 }, 'jackMissed', 'jackTopHeightMm'],
    [{ hammerCentreHeightMm: 150, stringHeightMm: 200, jack: { heightMm: 52, toeMm: 25, overlapMm: 0.1 } }, 'rollerSlips', 'jack.overlapMm'],
  ])('%j are refused for %s', (changed, reason, path) => {
    const [issue] = refused(changed as never);
    expect(issue).toMatchObject({ path, params: { reason } });
    if (issue === undefined) return;
    for (const language of languages) expect(explainIssue(createSay(language), issue, language)).not.toMatch(/[{}]|undefined|NaN/u);
  });

  it('are told by how much: with that much, they meet', () => {
    const arm = { xMm: 3, yMm: 4 };
    const met = turnToMeet(arm, { xMm: 0, yMm: 1 }, 7);
    expect(met).toEqual({ missMm: 2 });
    expect(turnToMeet(arm, { xMm: 0, yMm: 1 }, 5)).toHaveProperty('turn');
    expect(circlesMeet({ xMm: 0, yMm: 0 }, 3, { xMm: 10, yMm: 0 }, 4)).toEqual({ missMm: 3 });
    expect(circlesMeet({ xMm: 0, yMm: 0 }, 9, { xMm: 2, yMm: 0 }, 4)).toEqual({ missMm: 3 });
    expect(circlesMeet({ xMm: 0, yMm: 0 }, 3, { xMm: 4, yMm: 0 }, 5)).toEqual({ points: [{ xMm: expect.closeTo(0, 12), yMm: expect.closeTo(3, 12) }, { xMm: expect.closeTo(0, 12), yMm: expect.closeTo(-3, 12) }] });
  });
});
