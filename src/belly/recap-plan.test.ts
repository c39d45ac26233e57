import { degrees, millimetres, newtons, newtonsPerMillimetre } from '#units';
import { describe, expect, it } from 'vitest';
import { bearingAsRead } from './as-read.ts';
import { bearingOf } from './bearing.ts';
import { type RecapNote, recapPlanOf } from './recap-plan.ts';
import { settledOf } from './settle.ts';

const note = (rest: Partial<RecapNote> = {}): RecapNote => ({
  tensionN: newtons(680), strings: 3, speakingLengthMm: millimetres(622), backLengthMm: millimetres(95), frontHeightMm: millimetres(0), bridgeHeightMm: millimetres(0.9), rearHeightMm: millimetres(0.1),
  now: { tensionN: newtons(640), strings: 3 }, targetTotalDeg: degrees(1.2), ...rest,
});
const row = [note(), note({ backLengthMm: millimetres(80), bridgeHeightMm: millimetres(0.4) }), note({ unloadedNowMm: millimetres(1.3) })];
const spring = { stiffnessNPerMm: newtonsPerMillimetre(900) };

describe('a recapping planned', () => {
  it('gives the angle wanted: the bridge cut slack, strung and settled, bears it', () => {
    const { rows } = recapPlanOf(row, spring);
    const strung = settledOf(row.map((one, index) => ({ ...one, bridgeHeightMm: rows[index]?.slack?.cutToMm ?? one.bridgeHeightMm })), row.map(() => [{ station: 0, share: 1 }]), [[spring.stiffnessNPerMm]]);
    for (const total of strung.totalsDeg) expect(total).toBeCloseTo(1.2, 9);
  });

  it('takes a slack height that was measured, and lays the others on by what the board gives now', () => {
    const { rows, settling, forceNowN } = recapPlanOf(row, spring);
    expect(forceNowN).toBeCloseTo(row.reduce((sum, one) => sum + bearingOf({ ...one, ...one.now }).forceN, 0), 9);
    expect(settling?.nowMm).toBeCloseTo(forceNowN / 900, 12);
    expect(rows.map(({ slack }) => slack?.isMeasured)).toEqual([false, false, true]);
    expect(rows[0]?.slack?.nowMm).toBeCloseTo(0.9 + forceNowN / 900, 12);
    expect(rows[2]?.slack?.nowMm).toBe(1.3);
  });

  it('leaves every note as it was found where nothing is cut and the strings stay the same', () => {
    const same = row.map(({ unloadedNowMm: _, ...one }) => ({ ...one, tensionN: one.now.tensionN }));
    const { rows } = recapPlanOf(same, spring);
    for (const [index, { slack, nowDeg }] of rows.entries()) expect(slack?.uncutDeg, String(index)).toBeCloseTo(nowDeg, 9);
  });

  it('tells no slack heights without a board, and no uncertainty where none is stated', () => {
    const { rows, settling } = recapPlanOf(row);
    expect(settling).toBeUndefined();
    for (const one of rows) {
      expect(one).not.toHaveProperty('slack');
      expect(one).not.toHaveProperty('loadedChangeUncertaintyMm');
    }
  });

  it('carries the height errors as for small angles: u² = u(h)²·(1 + (L² + L_r²)/(L + L_r)²)', () => {
    const u = 0.1;
    const { rows } = recapPlanOf([note({ doubt: { heightUncertaintyMm: millimetres(u) } })]);
    expect(rows[0]?.loadedChangeUncertaintyMm).toBeCloseTo(u * Math.sqrt(1 + (622 ** 2 + 95 ** 2) / 717 ** 2), 4);
  });

  it('is surer of the height to come than of the change, since the bridge as it stands is not in it: u² = u(h)²·(L² + L_r²)/(L + L_r)²', () => {
    const { rows } = recapPlanOf([note({ doubt: { heightUncertaintyMm: millimetres(0.1) } })]);
    expect(rows[0]?.loadedUncertaintyMm).toBeCloseTo((0.1 * Math.hypot(622, 95)) / 717, 4);
  });

  it('carries heights and tension into the force, n·T·u(h)·√(1/L² + 1/L_r² + (1/L + 1/L_r)²) for each note, and claims none while a note states nothing', () => {
    const doubt = { heightUncertaintyMm: millimetres(0.05) };
    const two = recapPlanOf([note({ doubt }), note({ doubt })]);
    const each = 3 * 640 * 0.05 * Math.sqrt(1 / 622 ** 2 + 1 / 95 ** 2 + (1 / 622 + 1 / 95) ** 2);
    expect((two.forceNowUncertaintyN ?? 0) / (each * Math.SQRT2)).toBeCloseTo(1, 3);
    const sure = recapPlanOf([note({ doubt: { heightUncertaintyMm: millimetres(0) }, tensionUncertaintyN: newtons(6.8) })]);
    expect((sure.forceThenUncertaintyN ?? 0) / sure.forceThenN).toBeCloseTo(0.01, 9);
    expect(recapPlanOf([note({ doubt }), note()])).not.toHaveProperty('forceNowUncertaintyN');
  });

  it('adds what the stiffness leaves open', () => {
    const doubt = { heightUncertaintyMm: millimetres(0.1) };
    const sure = recapPlanOf([note({ doubt })], spring).rows[0];
    const { rows: [unsure], settling } = recapPlanOf([note({ doubt })], { ...spring, stiffnessUncertaintyNPerMm: newtonsPerMillimetre(90) });
    expect(sure?.slack?.changeUncertaintyMm).toBe(sure?.loadedChangeUncertaintyMm);
    expect(unsure?.slack?.changeUncertaintyMm).toBeCloseTo(Math.hypot(sure?.loadedChangeUncertaintyMm ?? 0, 0.1 * ((settling?.thenMm ?? 0) - (settling?.nowMm ?? 0))), 12);
  });
});

describe('bearing as read', () => {
  const pull = { tensionN: newtons(680), strings: 3, tensionUncertaintyN: newtons(5) };

  it('gives the same force by heights and by the angles they make', () => {
    const heights = bearingAsRead({ source: 'heights', isEstimated: false, ...note() }, pull);
    const angles = bearingAsRead({ source: 'angles', ...(heights.frontDeg === undefined ? {} : { frontDeg: heights.frontDeg }), ...(heights.rearDeg === undefined ? {} : { rearDeg: heights.rearDeg }) }, pull);
    expect(angles.forceN).toBeCloseTo(heights.forceN ?? Number.NaN, 9);
  });

  it('differs by a gauge of equal feet from the level pair of angles by less than one part in ten thousand', () => {
    const theta = 1;
    const readingMm = millimetres(12.5 * 2 * Math.tan((theta / 2) * (Math.PI / 180)));
    const read = bearingAsRead({ source: 'gauge', frontSpanMm: millimetres(25), rearSpanMm: millimetres(25), readingMm }, pull);
    expect(read.totalDeg).toBeCloseTo(theta, 12);
    const level = bearingAsRead({ source: 'angles', frontDeg: degrees(0.3), rearDeg: degrees(0.7) }, pull);
    expect(Math.abs((read.forceN ?? 0) / (level.forceN ?? Number.NaN) - 1)).toBeLessThan(1e-4);
  });

  it('lets a sure angle take its uncertainty of force from the tension alone', () => {
    const read = bearingAsRead({ source: 'angles', frontDeg: degrees(0.4), rearDeg: degrees(0.6), frontUncertaintyDeg: degrees(1e-9), rearUncertaintyDeg: degrees(1e-9) }, pull);
    expect(read.forceUncertaintyN).toBeCloseTo(((read.forceN ?? 0) * 5) / 680, 6);
  });
});
