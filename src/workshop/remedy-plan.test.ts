import { type KeyFigures, type TouchInput, analyseTouch } from '#action';
import { compass88, keysOf } from '#instrument';
import { grams } from '#units';
import { describe, expect, it } from 'vitest';
import { workItemDraftSchema } from './records.ts';
import { remedyPlan } from './remedy-plan.ts';

const INTENT = { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG: 20 } as const;
const measured = (value: number, u: number) => ({ value: grams(value), count: 1, standardUncertaintyG: grams(u) });
const board = (change: Readonly<Record<number, Partial<KeyFigures>>>, u = 0.3): TouchInput => ({
  kind: 'grand', compass: compass88, arms: { natural: {}, sharp: {} }, rule: 'interpolated', intent: INTENT,
  keys: keysOf(compass88).map((key): KeyFigures => ({ key, downWeightG: measured(49, u), upWeightG: measured(25, u), frontWeightG: measured(24, 0.05), ...change[key] })),
});
const planOf = (change: Readonly<Record<number, Partial<KeyFigures>>>, u?: number) => remedyPlan(analyseTouch(board(change, u)), 2);
const weights = (down: number, up: number, u = 0.3) => ({ downWeightG: measured(down, u), upWeightG: measured(up, u) });

describe('bench plan', () => {
  it('asks for nothing on an even keyboard', () => {
    expect(planOf({})).toEqual([]);
  });

  it('goes from what must be cleared through friction to lead, like jobs together, bass to treble', () => {
    const plan = planOf({
      10: { frontWeightG: measured(18, 0.05), ...weights(55, 31) },
      30: weights(55, 19),
      50: { outcome: 'sticks' },
      20: weights(56, 18),
      12: { frontWeightG: measured(30, 0.05), ...weights(43, 19) },
    });
    expect(plan.map(({ key, remedy }) => [key, remedy])).toEqual([
      [50, 'freeKey'], [20, 'measureKeyFriction'], [30, 'measureKeyFriction'], [10, 'addLead'], [12, 'removeLead'],
    ]);
  });

  it('names for each job what to weigh again, and the cycle it belongs to', () => {
    expect(planOf({ 10: { frontWeightG: measured(18, 0.05), ...weights(55, 31) } })).toEqual([
      { cycle: 2, key: 10, remedy: 'addLead', cause: 'frontLight', remeasure: ['frontWeightG', 'downWeightG', 'upWeightG'], stage: 4 },
    ]);
  });

  it('asks for the parts that are missing before any is changed', () => {
    const [job] = planOf({ 40: weights(55, 31) });
    expect(job).toMatchObject({ remedy: 'weighParts', cause: 'balanceHigh', remeasure: ['hammerWeightG', 'wippenWeightG'] });
  });

  it('gives no job for a finding that drowns in its own uncertainty', () => {
    const change = { 40: weights(53, 29, 3) };
    expect(analyseTouch(board(change, 3)).keys[39]?.findings.map(({ withinUncertainty }) => withinUncertainty)).toEqual([true]);
    expect(planOf(change, 3)).toEqual([]);
  });

  it('writes only what the store takes', () => {
    for (const draft of planOf({ 10: weights(56, 18), 50: { outcome: 'missing' }, 60: weights(20, 40) })) expect(workItemDraftSchema.safeParse(draft).success).toBe(true);
  });
});
