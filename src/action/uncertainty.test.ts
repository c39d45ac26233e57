import { runOperation } from '#operation';
import { mustBe } from '#result';
import { describe, expect, it } from 'vitest';
import { touchUncertaintyOperation } from './index.ts';

/** A small generator of known seed (mulberry32), so that a failing run can be told and repeated. */
function generatorOf(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

const deviationOf = (values: Float64Array): number => {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
};

const RUNS = 60_000;
const seed = Math.floor(Math.random() * 2 ** 32);

const key = { downWeightG: 49, upWeightG: 26, frontWeightG: 25, hammerWeightG: 9.5, wippenWeightG: 18, keyRatio: 0.51, helperSpringG: 0 };

describe(`the uncertainty of the touch beside a Monte Carlo, seed ${String(seed)}`, () => {
  // The deviation of 60 000 draws is itself known to 0.3 % (one sigma); 2 % leaves six sigmas and the terms of second order.
  it.each([
    { stepG: 1, repeatabilityG: 0, scaleUncertaintyG: 0.03, keyRatioUncertainty: 0.002, repeats: 1 },
    { stepG: 1, repeatabilityG: 0.7, scaleUncertaintyG: 0.1, keyRatioUncertainty: 0.005, repeats: 1 },
    { stepG: 2, repeatabilityG: 1, scaleUncertaintyG: 0.1, keyRatioUncertainty: 0.005, repeats: 4 },
    { stepG: 5, repeatabilityG: 1, scaleUncertaintyG: 0.3, keyRatioUncertainty: 0.01, repeats: 1 },
  ])('step $stepG g, repeatability $repeatabilityG g, scale $scaleUncertaintyG g, mean of $repeats', (how) => {
    const random = generatorOf(seed);
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const weigh = (truth: number): number => truth + how.stepG * (random() - 0.5) + Array.from({ length: how.repeats }, () => how.repeatabilityG * normal()).reduce((sum, each) => sum + each, 0) / how.repeats;
    const draws = { down: new Float64Array(RUNS), balance: new Float64Array(RUNS), friction: new Float64Array(RUNS), ratio: new Float64Array(RUNS) };
    for (let run = 0; run < RUNS; run += 1) {
      const [down, up] = [weigh(key.downWeightG), weigh(key.upWeightG)];
      const [front, hammer, wippen] = [key.frontWeightG, key.hammerWeightG, key.wippenWeightG].map((weight) => weight + how.scaleUncertaintyG * normal());
      const keyRatio = key.keyRatio + how.keyRatioUncertainty * normal();
      draws.down[run] = down;
      draws.balance[run] = (down + up) / 2;
      draws.friction[run] = (down - up) / 2;
      draws.ratio[run] = ((down + up) / 2 + (front ?? 0) - keyRatio * (wippen ?? 0)) / (hammer ?? 0);
    }
    const found = mustBe(runOperation(touchUncertaintyOperation, { ...key, ...how }));
    const near = (claimed: number, drawn: Float64Array): void => { expect(Math.abs(claimed / deviationOf(drawn) - 1)).toBeLessThan(0.02); };
    near(found.downWeightUncertaintyG, draws.down);
    near(found.balanceWeightUncertaintyG, draws.balance);
    near(found.frictionUncertaintyG, draws.friction);
    near(found.weightRatioUncertainty, draws.ratio);
    expect(found.weightRatioExpandedUncertainty).toBe(2 * found.weightRatioUncertainty);
    expect(Object.values(found.shares).reduce((sum: number, share: number) => sum + share)).toBeCloseTo(1, 12);
  });

  it('says which weighing the doubt comes from', () => {
    const how = { stepG: 5, repeatabilityG: 0, scaleUncertaintyG: 0, keyRatioUncertainty: 0 };
    expect(mustBe(runOperation(touchUncertaintyOperation, { ...key, ...how })).shares).toEqual({ balanceWeight: 1, frontWeight: 0, hammerWeight: 0, wippenWeight: 0, keyRatio: 0 });
  });
});
