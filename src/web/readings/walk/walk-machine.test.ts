import { compass88, outcomes } from '#instrument';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { splitFigures } from './walk-input.ts';
import { changePlan, keyAt, keysDone, slotsOf, startWalk, walkStep } from './walk-machine.ts';
import { keysToWalk } from './walk-order.ts';
import type { StandingFigure, WalkContext, WalkEvent, WalkPlan, WalkState, WalkWrite } from './walk-state.ts';

const pair: WalkPlan = { keys: [1, 2, 3], slots: slotsOf(['downWeightG', 'upWeightG'], 1), locale: 'en-GB' };

/** A walk with a sheet behind it that keeps what is written. */
function walking(plan: WalkPlan = pair) {
  const kept = new Map<string, StandingFigure>();
  const id = (key: number, slot: { quantity: string; repeat: number }) => `${String(key)} ${slot.quantity} ${String(slot.repeat)}`;
  const context: WalkContext = { plan, standing: (key, slot) => kept.get(id(key, slot)) };
  let state = startWalk(context);
  const written: WalkWrite[] = [];
  const send = (...events: readonly WalkEvent[]): WalkState => {
    for (const event of events) {
      const step = walkStep(state, event, context);
      state = step.state;
      written.push(...step.writes);
      for (const write of step.writes) {
        kept.set(id(write.key, write.slot), { value: Number((write.typed ?? '').replace(',', '.')) || null, outcome: write.outcome ?? null, typed: write.typed ?? null });
      }
    }
    return state;
  };
  const enter = (draft: string): WalkState => send({ type: 'typed', draft }, { type: 'enter' });
  const figures = (): readonly string[] => written.map(({ key, slot, typed, outcome }) => `${String(key)} ${slot.quantity} ${typed ?? outcome ?? ''}`);
  return { context, send, enter, figures, written, now: () => state };
}

describe('figures of a pair as a hand types them', () => {
  it.each([
    ['49/26', ['49', '26']],
    ['49 26', ['49', '26']],
    ['49;26', ['49', '26']],
    ['49, 26', ['49', '26']],
    ['49,5 / 26,5', ['49,5', '26,5']],
    ['49 g / 26 g', ['49g', '26g']],
    ['50 + 2/26', ['50+2', '26']],
    ['49,5', ['49,5']],
    ['3 1/4 oz', ['3 1/4 oz']],
    ['1/4 oz', ['1/4 oz']],
    ['49g', ['49g']],
    ['', []],
  ])('%j is %j', (typed, parts) => {
    expect(splitFigures(typed)).toEqual(parts);
  });
});

describe('walking the keys', () => {
  it('takes a pair in one line and goes to the next key by itself', () => {
    const walk = walking();
    expect(keyAt(walk.enter('49/26'), pair)).toBe(2);
    expect(walk.figures()).toEqual(['1 downWeightG 49', '1 upWeightG 26']);
  });

  it('takes down and up one after the other, each kept as it comes', () => {
    const walk = walking();
    expect(walk.enter('49').slot).toBe(1);
    expect(walk.figures()).toEqual(['1 downWeightG 49']);
    expect(keyAt(walk.enter('26'), pair)).toBe(2);
  });

  it('stays at an unlikely figure and keeps it when it is given again', () => {
    const walk = walking();
    const warned = walk.enter('95');
    expect(warned.warnings.map(({ code }) => code)).toEqual(['unlikely']);
    expect(warned.draft).toBe('95');
    expect(walk.written).toEqual([]);
    walk.send({ type: 'enter' });
    expect(walk.figures()).toEqual(['1 downWeightG 95']);
  });

  it('asks again when the warned figure was changed to another unlikely one', () => {
    const walk = walking();
    walk.enter('95');
    expect(walk.enter('96').warnings).toHaveLength(1);
    expect(walk.written).toEqual([]);
  });

  it('refuses what cannot be, and says what is allowed', () => {
    const walk = walking();
    const refused = walk.enter('4900');
    expect(refused.problem).toMatchObject({ code: 'notUnderstood', issue: { code: 'range', params: { min: 0, max: 300 } } });
    walk.send({ type: 'enter' });
    expect(walk.written).toEqual([]);
    expect(walk.now().draft).toBe('4900');
  });

  it('warns when up weight is above down weight', () => {
    const walk = walking();
    walk.enter('36');
    expect(walk.enter('38').warnings).toEqual([{ code: 'upAboveDown', downG: 36, upG: 38 }]);
  });

  it('writes nothing of a pair when one of the two is refused', () => {
    const walk = walking();
    walk.enter('49/x');
    expect(walk.now().problem?.code).toBe('notUnderstood');
    walk.enter('49/2600');
    expect(walk.written).toEqual([]);
  });

  it('counts figures that are too many', () => {
    const walk = walking();
    expect(walk.enter('49 26 12').problem).toEqual({ code: 'tooMany', given: 3, allowed: 2 });
  });

  it('takes a whole pair retyped where only the second figure was asked', () => {
    const walk = walking();
    walk.enter('49');
    walk.enter('48/25');
    expect(walk.figures()).toEqual(['1 downWeightG 49', '1 downWeightG 48', '1 upWeightG 25']);
  });

  it('keeps a typed figure before skip, back and a jump', () => {
    for (const move of [{ type: 'skip' }, { type: 'back' }, { type: 'goTo', key: 3 }] as const) {
      const walk = walking();
      walk.send({ type: 'typed', draft: '49' }, move);
      expect(walk.figures()).toEqual(['1 downWeightG 49']);
    }
  });

  it('an unlikely figure is kept by Enter alone: skip, back and a jump leave it where it is', () => {
    for (const move of [{ type: 'skip' }, { type: 'back' }, { type: 'goTo', key: 3 }, { type: 'ask', slot: 1 }] as const) {
      const walk = walking();
      walk.enter('95');
      const after = walk.send(move, move);
      expect([walk.figures(), after.draft, after.at, after.warnings.map(({ code }) => code)]).toEqual([[], '95', 0, ['unlikely']]);
      walk.send({ type: 'enter' });
      expect(walk.figures()).toEqual(['1 downWeightG 95']);
    }
  });

  it('a figure and then "does not return" are down and up weight', () => {
    const walk = walking();
    walk.send({ type: 'typed', draft: '49' }, { type: 'outcome', outcome: 'noReturn' });
    expect(walk.figures()).toEqual(['1 downWeightG 49', '1 upWeightG noReturn']);
    expect(keyAt(walk.now(), pair)).toBe(2);
  });

  it('a missing key is missing for every figure still open', () => {
    const walk = walking();
    walk.send({ type: 'outcome', outcome: 'missing' });
    expect(walk.figures()).toEqual(['1 downWeightG missing', '1 upWeightG missing']);
  });

  it('does not drop a typed pair for an outcome pressed after it', () => {
    const walk = walking();
    const state = walk.send({ type: 'typed', draft: '49/26' }, { type: 'outcome', outcome: 'sticks' });
    expect(state.problem?.code).toBe('clearFirst');
    expect(state.draft).toBe('49/26');
  });

  it('a remark goes with the next reading, and is not left behind', () => {
    const walk = walking();
    walk.send({ type: 'remark', remark: 'rubs its neighbour' }, { type: 'skip' });
    expect(walk.now().problem?.code).toBe('remarkNeedsReading');
    walk.enter('49/26');
    expect(walk.written.map(({ remark }) => remark)).toEqual(['rubs its neighbour', undefined]);
  });

  it('weighs every repeat before the next key', () => {
    const walk = walking({ ...pair, slots: slotsOf(['downWeightG', 'upWeightG'], 2) });
    walk.enter('49/26');
    expect(walk.now()).toMatchObject({ at: 0, slot: 2 });
    walk.enter('50/26');
    expect(walk.now().at).toBe(1);
    expect(walk.written.map(({ slot }) => slot.repeat)).toEqual([1, 1, 2, 2]);
    expect(keysDone(walk.context)).toBe(1);
  });

  it('an empty Enter keeps what stands and ends at the last key', () => {
    const walk = walking();
    for (let press = 0; press < 12; press += 1) walk.send({ type: 'enter' });
    expect(walk.now().at).toBe(3);
    walk.send({ type: 'back' });
    expect(walk.now().at).toBe(2);
  });

  it('carries key and draft over to another plan', () => {
    const walk = walking();
    walk.enter('49/26');
    const typing = walk.send({ type: 'typed', draft: '5' });
    const plan: WalkPlan = { ...pair, keys: [2, 1, 3], slots: slotsOf(['frontWeightG'], 1) };
    expect(changePlan(typing, pair, { ...walk.context, plan })).toMatchObject({ at: 0, slot: 0, draft: '5' });
  });

  it('goes on at the next key of another plan that leaves the key out', () => {
    const walk = walking();
    walk.enter('49/26');
    const at = walk.now();
    expect(changePlan(at, pair, { ...walk.context, plan: { ...pair, keys: [1, 3] } }).at).toBe(1);
    expect(changePlan(at, pair, { ...walk.context, plan: { ...pair, keys: [1] } }).at).toBe(0);
  });

  it('loses no typed figure, whatever is pressed', () => {
    const text = fc.oneof(fc.constantFrom('49', '26', '49/26', '49,5', '95', '4900', 'x', '49 26 12', '', ' ', '36/38'), fc.string({ maxLength: 6 }));
    const event: fc.Arbitrary<WalkEvent> = fc.oneof(
      text.map((draft): WalkEvent => ({ type: 'typed', draft })),
      fc.constant<WalkEvent>({ type: 'enter' }),
      fc.constant<WalkEvent>({ type: 'skip' }),
      fc.constant<WalkEvent>({ type: 'back' }),
      fc.constantFrom(...outcomes).map((outcome): WalkEvent => ({ type: 'outcome', outcome })),
      fc.nat({ max: 1 }).map((slot): WalkEvent => ({ type: 'ask', slot })),
      fc.constantFrom(1, 2, 3).map((key): WalkEvent => ({ type: 'goTo', key })),
      fc.string({ maxLength: 4 }).map((remark): WalkEvent => ({ type: 'remark', remark })),
    );
    fc.assert(
      fc.property(fc.array(event, { maxLength: 40 }), (events) => {
        const walk = walking();
        for (const next of events) {
          const { draft, remark } = walk.now();
          const before = walk.written.length;
          const after = walk.send(next);
          const now = walk.written.slice(before);
          const kept = now.flatMap(({ typed }) => (typed === undefined ? [] : [typed]));
          if (next.type === 'typed') continue;
          if (draft.trim() !== '' && after.draft !== draft) expect(kept).toEqual(splitFigures(draft));
          if (remark !== '' && next.type !== 'remark' && after.remark !== remark) expect(now.map((write) => write.remark)).toContain(remark);
        }
      }),
      { numRuns: 500 },
    );
  });
});

describe('the order of a walk', () => {
  const last = 88;
  it('chromatic from any key', () => {
    expect(keysToWalk(compass88, { order: 'chromatic', fromKey: 86, everyNth: 1 })).toEqual([86, 87, last]);
  });
  it('naturals, then sharps', () => {
    const keys = keysToWalk(compass88, { order: 'naturalsThenSharps', fromKey: 1, everyNth: 1 });
    expect(keys.slice(0, 4)).toEqual([1, 3, 4, 6]);
    expect(keys[52]).toBe(2);
    expect(keys).toHaveLength(last);
  });
  it('every sixth key as a sample', () => {
    const keys = keysToWalk(compass88, { order: 'sample', fromKey: 1, everyNth: 6 });
    expect(keys.slice(0, 3)).toEqual([1, 7, 13]);
    expect(keys).toHaveLength(15);
  });
});
