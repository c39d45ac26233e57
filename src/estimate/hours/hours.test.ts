import { betaProbabilityOf, normalProbabilityOf } from '#numerics';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pertMeanOf, pertSdOf, pertShapeOf, quantileTableOf, shareAt } from './beta-pert.ts';
import { closedFormOf, simulateHours } from './simulate.ts';

const sure = (low: number, likely: number, high: number, chancePct = 100) => ({ low, likely, high, chancePct });
const RUNS = 200_000;

describe('distributions beside SciPy 1.17', () => {
  it.each([[-8, 6.22096057427174e-16], [-5, 2.866515718791933e-07], [-3.6, 0.00015910859015753364], [-3.5, 0.00023262907903552502], [-1, 0.15865525393145707], [0, 0.5], [0.5, 0.6914624612740131], [2, 0.9772498680518208]])('norm.cdf(%d) is %d', (z, expected) => {
    expect(Math.abs(normalProbabilityOf(z) / expected - 1)).toBeLessThan(1e-11);
  });

  it.each([[0.01, 1, 5, 0.049009950100000005], [0.3, 1, 5, 0.83193], [0.5, 3, 3, 0.5], [0.2, 1.8, 4.2, 0.33158186178551863], [0.95, 4.6, 1.4, 0.9020132214465572], [0.001, 2.5, 3.5, 3.4296757541926325e-07], [0.999, 5, 1, 0.995009990004999]])('beta.cdf(%d, %d, %d) is %d', (x, alpha, beta, expected) => {
    expect(Math.abs(betaProbabilityOf(x, alpha, beta) / expected - 1)).toBeLessThan(1e-12);
  });

  it.each([
    [1, [4.904798842448404e-08, 0.00013277022347185668, 0.03232425120397933, 0.13224555093869167, 0.26083607107041146, 0.7172526511542863]],
    [3, [0.0029095746513916557, 0.04134555183708758, 0.29109866826017083, 0.504255306120575, 0.6594714295964859, 0.941757153995968]],
    [2.2, [0.0003391205675310359, 0.01244909833860896, 0.16987178370874256, 0.3550596877281944, 0.5136362483060624, 0.8783057697748509]],
    [5, [0.04763412943989068, 0.23141476963154908, 0.685623026347705, 0.873311209045757, 0.9513635627859, 0.999638309698706]],
    [1.5, [9.995387985092093e-06, 0.0019463464489517454, 0.08136396308813013, 0.22462880350810413, 0.37250033534923677, 0.7970006512218002]],
  ])('beta.ppf(norm.cdf(z)) with α %d, to 1e-6 of the range', (alpha, expected) => {
    const table = quantileTableOf({ alpha, beta: 6 - alpha });
    [-5.03, -3.21, -1.03, 0.02, 0.77, 2.91].forEach((z, i) => { expect(Math.abs(shareAt(table, z) - (expected[i] ?? 0))).toBeLessThan(1e-6); });
  });

  it('give rising quantiles whatever the three points', () => {
    fc.assert(fc.property(fc.double({ min: 1, max: 5, noNaN: true }), (alpha) => {
      const table = quantileTableOf({ alpha, beta: 6 - alpha });
      const shares = Array.from({ length: 400 }, (_, i) => shareAt(table, -6.5 + i * 0.0325));
      expect(shares.every((share, i) => share >= 0 && share <= 1 && (i === 0 || share >= (shares[i - 1] ?? 0)))).toBe(true);
    }), { numRuns: 40 });
  });
});

describe('hours of a job', () => {
  it('have the mean and spread of textbooks: 4, 6, 14 gives 7 and √(3·7/7)', () => {
    expect(pertMeanOf({ low: 4, likely: 6, high: 14 })).toBe(7);
    expect(pertSdOf({ low: 4, likely: 6, high: 14 })).toBeCloseTo(Math.sqrt(3), 12);
    expect(pertShapeOf({ low: 4, likely: 6, high: 14 })).toEqual({ alpha: 1.8, beta: 4.2 });
    expect(pertShapeOf({ low: 4, likely: 4, high: 4 })).toBeUndefined();
  });

  it.each([0, 0.3, 0.7, 1])('come out as the closed form says at correlation %d', (correlation) => {
    const tasks = [sure(16, 24, 40), sure(8, 12, 30), sure(2, 3, 9), sure(30, 42, 70)];
    const { meanH, sdH, exactMeanH, closedFormSdH } = simulateHours({ tasks, correlation, runs: RUNS, seed: 3 });
    expect(Math.abs(meanH - exactMeanH)).toBeLessThan((4 * closedFormSdH) / Math.sqrt(RUNS));
    // Scores correlate a little more than hours: never a wider spread, and at most 2 % narrower.
    expect(sdH / closedFormSdH).toBeGreaterThan(0.98);
    expect(sdH / closedFormSdH).toBeLessThan(1 + 4 / Math.sqrt(2 * RUNS));
  });

  it('of tasks of one shape fully tied have the quantiles of one of them', () => {
    const { p50H, p80H, p90H } = simulateHours({ tasks: Array.from({ length: 5 }, () => sure(0, 1, 6)), correlation: 1, runs: RUNS, seed: 5 });
    // SciPy 1.17: 5 · 6 · beta.ppf([0.5, 0.8, 0.9], 5/3, 13/3)
    [7.558619, 12.687495, 15.558046].forEach((expected, i) => { expect(Math.abs(([p50H, p80H, p90H][i] ?? 0) - expected)).toBeLessThan(0.08); });
  });

  it('with a branch that may come up hold its chance', () => {
    const tasks = [sure(10, 12, 20), sure(6, 10, 20, 25)];
    const { meanH, sdH, exactMeanH, closedFormSdH } = simulateHours({ tasks, correlation: 0, runs: RUNS, seed: 9 });
    expect(exactMeanH).toBeCloseTo(13 + 0.25 * 11, 12);
    expect(Math.abs(meanH - exactMeanH)).toBeLessThan((4 * closedFormSdH) / Math.sqrt(RUNS));
    expect(Math.abs(sdH / closedFormSdH - 1)).toBeLessThan(0.01);
    expect(simulateHours({ tasks: [sure(6, 10, 20, 0)], correlation: 0, runs: 100, seed: 1 })).toMatchObject({ meanH: 0, p90H: 0 });
  });

  it('without doubt are what is given, and scale with the hours', () => {
    expect(simulateHours({ tasks: [sure(5, 5, 5), sure(7, 7, 7)], correlation: 0.3, runs: 50, seed: 1 })).toMatchObject({ meanH: 12, sdH: 0, p50H: 12, p80H: 12, p90H: 12, exactMeanH: 12, closedFormSdH: 0 });
    const one = simulateHours({ tasks: [sure(1, 2, 5)], correlation: 0.3, runs: 999, seed: 1 });
    const ten = simulateHours({ tasks: [sure(10, 20, 50)], correlation: 0.3, runs: 999, seed: 1 });
    expect(ten.p80H).toBeCloseTo(10 * one.p80H, 9);
    expect(closedFormOf([sure(10, 20, 50)], 0).closedFormSdH).toBeCloseTo(10 * closedFormOf([sure(1, 2, 5)], 0).closedFormSdH, 9);
  });
});
