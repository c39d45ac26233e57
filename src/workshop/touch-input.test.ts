import { analyseTouch } from '#action';
import { type Reading, type SessionDraft, sessionDraftSchema } from '#instrument';
import { describe, expect, it } from 'vitest';
import { touchInputOf } from './touch-input.ts';

const session = (id: string, draft: Partial<SessionDraft>) => ({ ...sessionDraftSchema.parse({ cycle: 1, state: 'found', ...draft }), id, startedAt: '2020-01-01T09:00:00.000Z' });

let count = 0;
const reading = (given: Partial<Reading> & Pick<Reading, 'quantity' | 'value'>): Reading => ({
  id: `r${String((count += 1))}`, cycle: 1, state: 'found', scope: 'key', index: 40, repeat: 1, typed: String(given.value), outcome: null,
  uncertainty: null, basis: 'measured', remark: '', sessionId: 's', at: '2020-01-01T09:00:00.000Z', by: 'p', ...given,
});
const repeated = (...values: readonly number[]) => values.map((value, index) => reading({ quantity: 'downWeightG', value, repeat: index + 1 }));

const inputOf = (readings: readonly Reading[], draft: Partial<SessionDraft> = {}) =>
  touchInputOf({ instrument: { kind: 'grand', firstMidi: 21, lastMidi: 108 }, sessions: [session('s', draft)], readings, cycle: 1, state: 'found', intent: null });
const downOf = (readings: readonly Reading[], draft: Partial<SessionDraft> = {}) => inputOf(readings, draft).keys[0]?.downWeightG;

describe('figures from readings', () => {
  it('takes the mean of the repeats', () => {
    expect(downOf(repeated(49, 50, 51))).toMatchObject({ value: 50, count: 3 });
  });

  // JCGM 100, u² = q²/12 + s²/n; the four rows are worked by hand.
  it.each([
    ['step 1 g', { stepG: 1 }, [49], Math.sqrt(1 / 12)],
    ['step 1 g, repeatability 0.7 g', { stepG: 1, repeatabilityG: 0.7 }, [49], Math.sqrt(1 / 12 + 0.49)],
    ['mean of four', { stepG: 1, repeatabilityG: 0.7 }, [49, 49, 49, 49], Math.sqrt(1 / 12 + 0.49 / 4)],
    ['repeats that scatter more than was stated', { stepG: 1, repeatabilityG: 0.1 }, [48, 50], Math.sqrt(1 / 12 + 2 / 2)],
  ] as const)('works out the standard uncertainty: %s', (_, draft, values, expected) => {
    expect(downOf(repeated(...values), draft)?.standardUncertaintyG).toBeCloseTo(expected, 12);
  });

  it('claims no uncertainty where neither step nor repeatability is stated, or the reading has no session', () => {
    expect(downOf(repeated(49, 51))?.standardUncertaintyG).toBeUndefined();
    expect(downOf([reading({ quantity: 'downWeightG', value: 49, sessionId: null })], { stepG: 1 })?.standardUncertaintyG).toBeUndefined();
    expect(downOf([reading({ quantity: 'downWeightG', value: 49, sessionId: 'gone' })], { stepG: 1 })?.standardUncertaintyG).toBeUndefined();
  });

  it('takes a reading’s own uncertainty before its session’s', () => {
    expect(downOf([reading({ quantity: 'downWeightG', value: 49, uncertainty: 0.2 })], { stepG: 5 })?.standardUncertaintyG).toBeCloseTo(0.2, 12);
  });

  it('passes over other states and cycles', () => {
    expect(inputOf([reading({ quantity: 'downWeightG', value: 49, state: 'finished' }), reading({ quantity: 'downWeightG', value: 49, cycle: 2 })]).keys).toEqual([]);
  });

  it('tells the worst outcome of down and up weight, and none from other weights', () => {
    const outcome = (quantity: Reading['quantity'], name: Reading['outcome']) => reading({ quantity, value: null, typed: null, outcome: name });
    expect(inputOf([outcome('downWeightG', 'overRange'), outcome('upWeightG', 'sticks')]).keys[0]?.outcome).toBe('sticks');
    expect(inputOf([outcome('frontWeightG', 'unweighable')]).keys[0]?.outcome).toBeUndefined();
  });

  it('keeps naturals and sharps apart', () => {
    const arm = (index: number, value: number) => reading({ quantity: 'keyFrontMm', scope: 'colour', index, value, sessionId: null });
    expect(inputOf([arm(0, 228), arm(1, 193)]).arms).toEqual({ natural: { keyFrontMm: 228 }, sharp: { keyFrontMm: 193 } });
  });
});

describe('how it was weighed', () => {
  const pair = [reading({ quantity: 'downWeightG', value: 49 }), reading({ quantity: 'upWeightG', value: 26 })];

  it('is handed on as stated', () => {
    expect(inputOf(pair, { stepG: 1, rule: 'firstMovesLastLifts', dampers: 'lifted', helperSprings: 'none' })).toMatchObject({
      stepG: 1, rule: 'firstMovesLastLifts', dampers: 'lifted', helperSprings: 'none', keys: [{ frictionBiasG: 0.5 }],
    });
  });

  it('is absent where it was not stated', () => {
    const input = inputOf(pair);
    expect([input.stepG, input.rule, input.dampers, input.helperSprings, input.keys[0]?.frictionBiasG]).toEqual([undefined, undefined, undefined, undefined, undefined]);
  });

  it('is taken key by key where two sessions differ', () => {
    const sessions = [session('s', { stepG: 1, rule: 'firstMovesLastLifts' }), session('t', { stepG: 5, rule: 'firstMovesLastLifts' })];
    const readings = [...pair, ...pair.map((each): Reading => ({ ...each, index: 41, sessionId: 't' }))];
    const input = touchInputOf({ instrument: { kind: 'grand', firstMidi: 21, lastMidi: 108 }, sessions, readings, cycle: 1, state: 'found', intent: null });
    expect(input.stepG).toBeUndefined();
    const { keys } = analyseTouch(input);
    expect([keys[39]?.correctedFrictionG, keys[40]?.correctedFrictionG]).toEqual([11, 9]);
  });
});
