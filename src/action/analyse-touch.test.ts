import { type TouchIntent, compass85, compass88, keyCountOf } from '#instrument';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cause, KeyFigures, KeyTouch, TouchInput } from './analysis.ts';
import { analyseTouch, askedUpWeightOf, insideCountOf, isAdvice } from './index.ts';
import { type PlantedFault, TEST_ARMS, keyboardWith, measured, swayFrom } from './testing/keyboard.ts';

const INTENT = { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG: 20 } as const;

/** Sum of three even spreads: a bell with standard deviation 1. */
const bellFrom = (seed: number) => {
  const sway = swayFrom(seed);
  return () => sway() + sway() + sway();
};

const soundBoard = (seed = 11) => keyboardWith({}, bellFrom(seed));

const touchAt = (input: TouchInput, key: number): KeyTouch => {
  const found = analyseTouch(input).keys.find((touch) => touch.key === key);
  if (found === undefined) throw new Error(`key ${String(key)} is not in the answer`);
  return found;
};
const told = (touch: KeyTouch): readonly Cause[] => touch.findings.filter(({ withinUncertainty }) => !withinUncertainty).map(({ cause }) => cause);
const onlyWeights = ({ key, downWeightG, upWeightG }: KeyFigures): KeyFigures => ({ key, downWeightG, upWeightG });
const pair = (key: number, down: number, up: number, u?: number): KeyFigures => ({ key, downWeightG: measured(down, u), upWeightG: measured(up, u) });
const bare = (keys: readonly KeyFigures[], rest: Partial<TouchInput> = {}): TouchInput => ({
  kind: 'grand', compass: compass88, keys, arms: { natural: {}, sharp: {} }, intent: null, ...rest,
});

describe('planted faults', () => {
  const planted: Readonly<Record<number, readonly [PlantedFault, Cause]>> = {
    7: [{ frontG: -6 }, 'frontLight'],
    15: [{ hammerG: 0.8 }, 'hammerHeavy'],
    23: [{ frictionG: 5 }, 'frictionHigh'],
    30: [{ rollerMm: -1 }, 'ratioHigh'],
    38: [{ frontG: 5 }, 'frontHeavy'],
    46: [{ frictionG: -4.5 }, 'frictionLow'],
    54: [{ wippenG: 8 }, 'wippenHeavy'],
    61: [{ hammerG: -0.8 }, 'hammerLight'],
    66: [{ frictionG: 5 }, 'frictionHigh'],
    75: [{ rollerMm: 1.5 }, 'ratioLow'],
  };
  const faults = Object.fromEntries(Object.entries(planted).map(([key, [fault]]) => [Number(key), fault]));

  it('are named with the right cause, with few false alarms, on forty keyboards', () => {
    let named = 0;
    let falseAlarms = 0;
    for (let seed = 1; seed <= 40; seed += 1) {
      for (const touch of analyseTouch(keyboardWith(faults, bellFrom(seed * 7919))).keys) {
        const cause = planted[touch.key]?.[1];
        const causes: readonly Cause[] = told(touch).filter((each) => each !== 'upWeightLow');
        if (cause === undefined) falseAlarms += Math.min(1, causes.length);
        else if (causes.includes(cause)) named += 1;
      }
    }
    expect(named).toBeGreaterThanOrEqual(0.97 * 40 * 10);
    expect(falseAlarms).toBeLessThanOrEqual(0.01 * 40 * 78);
  });

  it('carry their size: 6 g of lead missing is told as about 6 g', () => {
    const finding = touchAt(keyboardWith({ 7: { frontG: -6 } }, () => 0), 7).findings.find(({ cause }) => cause === 'frontLight');
    expect(finding?.amountG).toBeCloseTo(6, 0);
    expect(finding?.evidence).toBe('measured');
  });

  it('leave a sound keyboard alone', () => {
    const quiet = analyseTouch(keyboardWith({}, () => 0));
    expect(quiet.keys.flatMap(told)).toEqual([]);
  });
});

describe('faults that cancel', () => {
  // 49/13 with front weight 30.2 and hammer 9.0: down weight on target, friction 6 g up, front weight 5.4 g over. Own figures.
  const base = keyboardWith({}, () => 0);
  const level = base.keys.map(({ key }): KeyFigures => ({
    ...pair(key, 49, 25, 0.3),
    frontWeightG: measured(24.8, 0.05), hammerWeightG: measured(9, 0.05), wippenWeightG: measured(18, 0.05),
  }));
  const keys = level.map((figures): KeyFigures => (figures.key === 40 ? { ...figures, ...pair(40, 49, 13, 0.3), frontWeightG: measured(30.2, 0.05) } : figures));
  const input: TouchInput = { ...base, keys, rule: 'interpolated', arms: { natural: TEST_ARMS.natural, sharp: TEST_ARMS.natural }, intent: INTENT };

  it('are told although the down weight is perfect', () => {
    const touch = touchAt(input, 40);
    expect(touch.verdict).toBe('inside');
    expect(touch.deviationG).toBe(0);
    expect(touch.shares?.frictionG).toBeCloseTo(6, 9);
    expect(touch.shares?.frontG).toBeCloseTo(-5.4, 9);
    expect(told(touch)).toEqual(expect.arrayContaining(['frictionHigh', 'frontHeavy', 'cancelling']));
    expect(touch.findings.find(({ cause }) => cause === 'cancelling')?.amountG).toBeCloseTo(5.4, 9);
  });

  it('are told from down and up weight alone, without naming a part', () => {
    const touch = touchAt({ ...input, keys: keys.map(onlyWeights) }, 40);
    expect(told(touch)).toEqual(expect.arrayContaining(['frictionHigh', 'balanceLow', 'cancelling']));
    expect(told(touch)).not.toContain('frontHeavy');
    expect(touch.next.slice(0, 2)).toEqual(['keyFriction', 'frontWeight']);
  });
});

describe('a diagnosis claims only what was measured', () => {
  const parts = new Set<Cause>(['ratioHigh', 'ratioLow', 'hammerHeavy', 'hammerLight', 'wippenHeavy', 'wippenLight', 'frontLight', 'frontHeavy']);

  it('names no part when only down and up weight were taken', () => {
    const input = keyboardWith({ 15: { hammerG: 1 }, 30: { rollerMm: -1.5 } }, bellFrom(3));
    const causes = analyseTouch({ ...input, keys: input.keys.map(onlyWeights), intent: INTENT }).keys.flatMap(told);
    expect(causes).toContain('balanceHigh');
    expect(causes.filter((cause) => parts.has(cause))).toEqual([]);
  });

  it('claims no uncertainty and corrects no friction when step and rule were not stated', () => {
    const { keys, caveats, next } = analyseTouch(bare([pair(40, 49, 26)], { intent: INTENT }));
    const touch = keys[39];
    expect(touch?.balanceWeightG).toBe(37.5);
    expect(touch?.frictionG).toBe(11.5);
    expect(touch?.correctedFrictionG).toBeUndefined();
    expect(touch?.standardUncertaintyG).toBeUndefined();
    expect(caveats).toEqual(expect.arrayContaining(['stepNotStated', 'ruleNotStated', 'dampersNotStated']));
    expect(next).toContain('step');
  });

  it('corrects friction for the step when step and rule are stated', () => {
    expect(touchAt(bare([pair(40, 49, 26)], { stepG: 1, rule: 'firstMovesLastLifts' }), 40).correctedFrictionG).toBe(11);
    expect(touchAt(bare([pair(40, 49, 26)], { stepG: 1, rule: 'interpolated' }), 40).correctedFrictionG).toBe(11.5);
  });

  it('works out no ratio with resting dampers or helper springs that were not weighed', () => {
    expect(touchAt({ ...soundBoard(), dampers: 'resting' }, 40).weightRatio).toBeUndefined();
    expect(touchAt({ ...soundBoard(), helperSprings: 'engaged' }, 40).weightRatio).toBeUndefined();
    expect(touchAt(soundBoard(), 40).weightRatio).toBeGreaterThan(5);
  });

  it('gives uprights friction and balance only', () => {
    const analysis = analyseTouch({ ...keyboardWith({ 20: { frictionG: 7 }, 50: { frontG: -7 } }, bellFrom(5)), kind: 'upright', intent: INTENT });
    expect(analysis.partial).toBe(true);
    expect(analysis.caveats).toContain('upright');
    expect(analysis.weightRatio).toEqual({ natural: { notes: 0, value: undefined }, sharp: { notes: 0, value: undefined } });
    const causes = analysis.keys.flatMap(told);
    expect(causes).toEqual(expect.arrayContaining(['frictionHigh', 'balanceHigh']));
    expect(causes.filter((cause) => parts.has(cause))).toEqual([]);
    expect(analysis.keys.flatMap(({ findings }) => findings.flatMap(({ remedies }) => remedies))).not.toContain('treatRoller');
  });
});

describe('friction', () => {
  it('of a whole section gone tight does not hide itself among its neighbours', () => {
    const tight = Object.fromEntries(Array.from({ length: 20 }, (_, index) => [34 + index, { frictionG: 6 }]));
    const touch = touchAt(keyboardWith(tight, () => 0), 43);
    const finding = touch.findings.find(({ cause }) => cause === 'frictionHigh');
    expect(finding?.evidence).toBe('register');
    expect(finding?.amountG).toBeGreaterThan(4);
  });

  it('is told of the key when the key alone was weighed and rubs, of the action when it does not', () => {
    const input = keyboardWith({ 40: { frictionG: 6 } }, () => 0);
    const withKeyFriction = (value: number): TouchInput => ({
      ...input, keys: input.keys.map((figures) => (figures.key === 40 ? { ...figures, keyFrictionG: measured(value, 0.3) } : figures)),
    });
    expect(told(touchAt(withKeyFriction(8.5), 40))).toContain('keyFrictionHigh');
    expect(told(touchAt(withKeyFriction(8.5), 40))).not.toContain('frictionHigh');
    const above = touchAt(withKeyFriction(2), 40).findings.find(({ cause }) => cause === 'frictionHigh');
    expect(above?.remedies[0]).toBe('repinCentres');
    expect(touchAt(input, 40).findings.find(({ cause }) => cause === 'frictionHigh')?.remedies[0]).toBe('measureKeyFriction');
  });

  // 18 g at G2 and 13.5 g at D6 are missed by the neighbours of a noisy set and caught by the usual ranges. Common practice, no source.
  it.each([[23, 18], [66, 13.5]])('of key %i is told at %d g by the register alone', (key, friction) => {
    const touch = touchAt(bare([pair(key, 37 + friction, 37 - friction)], { rule: 'interpolated' }), key);
    expect(told(touch)).toContain('frictionHigh');
    expect(touch.findings[0]?.evidence).toBe('register');
  });
});

describe('balance', () => {
  const even = (balance: number): TouchInput => {
    const base = keyboardWith({}, () => 0);
    const keys = base.keys.map(({ key }): KeyFigures => ({
      ...pair(key, balance + 12, balance - 12, 0.3), frontWeightG: measured(24, 0.05), hammerWeightG: measured(9, 0.05), wippenWeightG: measured(18, 0.05),
    }));
    return { ...base, keys, rule: 'interpolated', intent: INTENT };
  };

  it('a little off throughout is put right by lead, last of all', () => {
    expect(touchAt(even(40), 40).findings).toMatchObject([{ cause: 'balanceHigh', amountG: 3, evidence: 'target', stage: 4, remedies: ['addLead'] }]);
    expect(touchAt(even(34), 40).findings).toMatchObject([{ cause: 'balanceLow', amountG: -3, stage: 4, remedies: ['removeLead'] }]);
  });

  it('far off throughout is not leaded away before ratio and hammers were looked at', () => {
    expect(touchAt(even(45), 40).findings).toMatchObject([{ cause: 'balanceHigh', amountG: 8, stage: 2, remedies: ['checkLevers', 'lightenHammer', 'addLead'] }]);
  });

  it('and friction together make up the whole departure, the steps of the weights taken out once', () => {
    const { deviationG, findings } = touchAt(bare([pair(40, 49, 13)], { intent: INTENT, stepG: 4, rule: 'firstMovesLastLifts' }), 40);
    expect(findings.filter(({ cause }) => cause === 'frictionHigh' || cause === 'balanceLow').map(({ amountG }) => amountG)).toEqual([3, -3]);
    expect(deviationG).toBe(0);
  });

  it('asks to weigh the parts where they are not known', () => {
    const { keys } = even(40);
    expect(touchAt({ ...even(40), keys: keys.map(onlyWeights) }, 40).findings).toMatchObject([{ cause: 'balanceHigh', stage: 2, remedies: ['weighParts'] }]);
  });
});

describe('uncertainty', () => {
  it('keeps a finding smaller than its own expanded uncertainty from being acted on', () => {
    const coarse = soundBoard().keys.map((figures): KeyFigures => ({ ...pair(figures.key, figures.key === 40 ? 54 : 49, 25, 1.8) }));
    const touch = touchAt(bare(coarse, { intent: INTENT, rule: 'interpolated' }), 40);
    expect(touch.findings.filter(({ cause }) => cause === 'frictionHigh' || cause === 'balanceHigh').every(({ withinUncertainty }) => withinUncertainty)).toBe(true);
    expect(touch.findings.length).toBeGreaterThan(0);
    expect(touch.next).toContain('repeat');
  });

  it('calls a key doubtful where it cannot tell the side of the limit', () => {
    const at = (down: number, u?: number) => touchAt(bare([pair(40, down, 26, u)], { intent: INTENT }), 40);
    expect(at(51, 0.5)).toMatchObject({ verdict: 'inside', doubtful: true });
    expect(at(52, 0.6)).toMatchObject({ verdict: 'outside', doubtful: true });
    expect(at(49, 0.5)).toMatchObject({ verdict: 'inside', doubtful: false });
    expect(at(51)).toMatchObject({ verdict: 'inside', doubtful: false });
  });

  it('guards the count by the uncertainty, and gives none where that is unknown', () => {
    const of = (u?: number) => analyseTouch(bare([47, 48, 49, 50, 51, 52].map((down, index) => pair(index + 30, down, 26, u)), { intent: INTENT })).summary;
    expect(of(0.5)).toMatchObject({ inside: 5, insideGuarded: 3, measured: 6, keys: 88 });
    expect(of()).toMatchObject({ inside: 5, insideGuarded: undefined });
  });
});

describe('what is asked for', () => {
  // Common practice, no source: a keyboard that runs from 47 to 50 g counts as inside 49 ± 2.
  it('takes 47 to 50 g as inside 49 ± 2', () => {
    const { summary } = analyseTouch(bare([47, 48, 49, 50].map((down, index) => pair(index + 1, down, 24)), { intent: INTENT }));
    expect(summary.inside).toBe(4);
  });

  it('counts as inside what its own keys say, the ends of the tolerance included however their decimals come out in binary', () => {
    // 49.5 less 49.3 is a hair more than 0.2 in binary.
    const decimal: TouchIntent = { even: 'downWeight', targetG: 49.3, toleranceG: 0.2, upWeightMinG: 0 };
    const input = bare([...[49.1, 49.5, 49.6].map((down, index) => pair(index + 1, down, 24)), { ...pair(4, 49.3, 24), outcome: 'sticks' as const }, { key: 5, outcome: 'missing' }], { intent: decimal });
    const { keys, summary } = analyseTouch(input);
    expect(summary).toMatchObject({ inside: 2, judged: 5, measured: 3, outcomes: 2 });
    expect(keys.filter(({ verdict }) => verdict === 'inside').map(({ key }) => key)).toEqual([1, 2]);
    const row = keys.map(({ verdict, figures }) => (verdict === 'outcome' ? null : (figures.downWeightG?.value ?? null)));
    expect(insideCountOf(row, { target: 49.3, tolerance: 0.2 })).toBe(2);
  });

  it('counts the same by verdicts, by the row as read and by the row of what is missed, whatever is asked', () => {
    const tenths = (min: number, max: number) => fc.integer({ min: 10 * min, max: 10 * max }).map((value) => value / 10);
    fc.assert(fc.property(fc.array(tenths(40, 60), { minLength: 1, maxLength: 40 }), tenths(45, 55), tenths(1, 6), (downs, targetG, toleranceG) => {
      const { keys, summary } = analyseTouch(bare(downs.map((down, index) => pair(index + 1, down, 20, 0.5)), { intent: { even: 'downWeight', targetG, toleranceG, upWeightMinG: 0 } }));
      const band = { target: targetG, tolerance: toleranceG };
      expect(summary.inside).toBe(keys.filter(({ verdict }) => verdict === 'inside').length);
      expect(summary.inside).toBe(insideCountOf(downs, band));
      expect(summary.insideGuarded).toBe(insideCountOf(downs, band, () => 1));
    }), { numRuns: 60 });
  });

  it('runs straight between the anchors of a curve and level outside them', () => {
    const intent: TouchIntent = { even: 'curve', anchors: [{ key: 60, downWeightG: 47 }, { key: 20, downWeightG: 51 }], toleranceG: 2, upWeightMinG: 20 };
    const { keys } = analyseTouch(bare([], { intent }));
    expect([1, 20, 40, 60, 88].map((key) => keys[key - 1]?.targetG)).toEqual([51, 51, 49, 47, 47]);
  });

  it('judges the balance weight when that is to be even', () => {
    const intent = { even: 'balanceWeight', targetG: 37, toleranceG: 1, upWeightMinG: 20 } as const;
    expect(touchAt(bare([pair(40, 60, 14)], { intent }), 40)).toMatchObject({ verdict: 'inside', deviationG: 0 });
    expect(touchAt(bare([{ key: 40, downWeightG: measured(49) }], { intent }), 40).verdict).toBe('unmeasured');
  });

  it('judges nothing without an intent', () => {
    const { keys, summary, caveats } = analyseTouch(bare([pair(40, 70, 14)]));
    expect(keys[39]?.verdict).toBe('noTarget');
    expect(summary.inside).toBe(0);
    expect(caveats).toContain('noIntent');
  });

  it('judges up weight by what was asked and by nothing else', () => {
    const low = (up: number, intent: TouchInput['intent']) => touchAt(bare([pair(40, 49, up)], { intent }), 40);
    expect(low(19, INTENT)).toMatchObject({ upWeightLow: true, findings: expect.arrayContaining([expect.objectContaining({ cause: 'upWeightLow', amountG: -1, evidence: 'target' })]) as unknown });
    expect(low(20, INTENT).upWeightLow).toBe(false);
    expect(low(12, { ...INTENT, upWeightMinG: 10 }).findings.filter(({ cause }) => cause === 'upWeightLow' || cause === 'upWeightSlow')).toEqual([]);
  });

  it.each([['no intent', null], ['an intent that asks for no up weight', { ...INTENT, upWeightMinG: 0 }]] as const)('gives advice on a slow up weight where there is %s, and calls it no failure', (_, intent) => {
    const input = bare([pair(40, 49, 20), pair(41, 49, 21)], { intent });
    const touch = touchAt(input, 40);
    expect(touch.upWeightLow).toBe(false);
    expect(analyseTouch(input).summary.upWeightLow).toBe(0);
    // The middle register's usual least, 21 g. Common practice, no source.
    expect(touch.findings.filter(isAdvice)).toMatchObject([{ cause: 'upWeightSlow', amountG: -1, evidence: 'register' }]);
    expect(touchAt(input, 41).findings.filter(isAdvice)).toEqual([]);
    expect(askedUpWeightOf(intent)).toBeUndefined();
    expect(askedUpWeightOf(INTENT)).toBe(20);
  });
});

describe('bad and missing figures', () => {
  it('answers every key of an empty keyboard, and asks for down and up weight', () => {
    const { keys, summary, next } = analyseTouch(bare([]));
    expect(keys).toHaveLength(88);
    expect(summary).toMatchObject({ measured: 0, inside: 0, outliers: [] });
    expect(next).toEqual(['downUp']);
  });

  it('answers any compass, and leaves out keys beyond it', () => {
    for (const compass of [compass85, { firstMidi: 29, lastMidi: 101 }, { firstMidi: 60, lastMidi: 71 }]) {
      const { keys } = analyseTouch(bare([pair(1, 49, 26), pair(200, 49, 26)], { compass }));
      expect(keys.map(({ key }) => key)).toEqual(Array.from({ length: keyCountOf(compass) }, (_, index) => index + 1));
    }
  });

  it('counts a key that sticks as outside, whatever else was read, and names no number for it', () => {
    const { keys, summary } = analyseTouch(bare([{ ...pair(40, 49, 26), outcome: 'sticks' }], { intent: INTENT }));
    expect(keys[39]).toMatchObject({ verdict: 'outcome', doubtful: false });
    expect(keys[39]?.findings[0]).toMatchObject({ cause: 'outcome', stage: 0, remedies: ['freeKey'] });
    expect(summary).toMatchObject({ outcomes: 1, inside: 0, measured: 0 });
  });

  it('says that up weight above down weight is a misreading, and draws nothing else from it', () => {
    const touch = touchAt({ ...soundBoard(), keys: soundBoard().keys.map((figures) => (figures.key === 40 ? { ...figures, ...pair(40, 26, 49, 0.5) } : figures)) }, 40);
    expect(told(touch)).toEqual(['upAboveDown']);
    expect(touch.figures).toMatchObject({ downWeightG: { value: 26 }, upWeightG: { value: 49 } });
    expect([touch.upAboveDown, touch.balanceWeightG, touch.frictionG, touch.correctedFrictionG, touch.standardUncertaintyG, touch.weightRatio, touch.shares]).toEqual([true, undefined, undefined, undefined, undefined, undefined, undefined]);
    expect(touch.next).toEqual(['repeat']);
    expect(analyseTouch(soundBoard()).keys.filter(({ frictionG, upAboveDown }) => frictionG !== undefined && !upAboveDown)).toHaveLength(88);
  });

  it('claims nothing from a down weight alone but its distance from the target', () => {
    const touch = touchAt(bare([{ key: 40, downWeightG: measured(56) }], { intent: INTENT }), 40);
    expect(touch).toMatchObject({ verdict: 'outside', deviationG: 7, findings: [], next: ['downUp'] });
  });
});

describe('properties', () => {
  it('shares add up exactly: what is left of the down weight without them does not depend on the key’s own parts', () => {
    const input = keyboardWith({}, bellFrom(21));
    const change = fc.record({ frontG: fc.double({ min: -20, max: 20, noNaN: true }), hammerG: fc.double({ min: -2, max: 4, noNaN: true }), wippenG: fc.double({ min: -5, max: 9, noNaN: true }), downG: fc.integer({ min: 0, max: 30 }) });
    const reference = (keys: readonly KeyFigures[]): number => {
      const { figures, shares } = touchAt({ ...input, keys }, 40);
      if (shares === undefined) throw new Error('every part is known here');
      const sum = shares.ratioG + shares.hammerG + shares.wippenG + shares.frontG + shares.frictionG;
      return (figures.downWeightG?.value ?? Number.NaN) - sum;
    };
    const before = reference(input.keys);
    fc.assert(fc.property(change, ({ frontG, hammerG, wippenG, downG }) => {
      const changed = input.keys.map((figures): KeyFigures => (figures.key !== 40 ? figures : {
        ...figures,
        downWeightG: measured((figures.downWeightG?.value ?? 0) + downG),
        frontWeightG: measured((figures.frontWeightG?.value ?? 0) + frontG),
        hammerWeightG: measured((figures.hammerWeightG?.value ?? 0) + hammerG),
        wippenWeightG: measured((figures.wippenWeightG?.value ?? 0) + wippenG),
      }));
      // The target takes K and the neighbours' parts; only the wippen's own share enters with K, so the rest stays where it was.
      expect(reference(changed)).toBeCloseTo(before, 8);
    }), { numRuns: 30 });
  });

  it('does not mind the order the keys come in', () => {
    const input = { ...keyboardWith({ 30: { rollerMm: -1 }, 50: { frictionG: 6 } }, bellFrom(9)), intent: INTENT };
    const before = analyseTouch(input);
    fc.assert(fc.property(fc.shuffledSubarray([...input.keys], { minLength: 88, maxLength: 88 }), (keys) => {
      expect(analyseTouch({ ...input, keys })).toEqual(before);
    }), { numRuns: 5 });
  });

  it('moves balance and deviation by a constant added to every weight, and leaves friction alone', () => {
    const input = { ...soundBoard(4), intent: INTENT };
    const before = analyseTouch(input);
    fc.assert(fc.property(fc.integer({ min: -10, max: 10 }), (shift) => {
      const keys = input.keys.map((figures): KeyFigures => pair(figures.key, (figures.downWeightG?.value ?? 0) + shift, (figures.upWeightG?.value ?? 0) + shift));
      analyseTouch({ ...input, keys }).keys.forEach((touch, index) => {
        const was = before.keys[index];
        expect(touch.frictionG).toBeCloseTo(was?.frictionG ?? Number.NaN, 9);
        expect(touch.balanceWeightG).toBeCloseTo((was?.balanceWeightG ?? Number.NaN) + shift, 9);
        expect(touch.deviationG).toBeCloseTo((was?.deviationG ?? Number.NaN) + shift, 9);
      });
    }), { numRuns: 8 });
  });

  it('answers finite figures and ordered stages for whatever pairs are typed', () => {
    const weights = fc.integer({ min: 0, max: 300 });
    fc.assert(fc.property(fc.array(fc.record({ key: fc.integer({ min: 1, max: 88 }), down: weights, up: weights }), { maxLength: 60 }), (rows) => {
      const keys = [...new Map(rows.map(({ key, down, up }) => [key, pair(key, down, up)])).values()];
      for (const { findings, frictionG = 0, balanceWeightG = 0 } of analyseTouch(bare(keys, { intent: INTENT })).keys) {
        expect(Number.isFinite(frictionG) && Number.isFinite(balanceWeightG)).toBe(true);
        expect(findings.every(({ amountG = 0 }) => Number.isFinite(amountG))).toBe(true);
        expect(findings.map(({ stage }) => stage)).toEqual(findings.map(({ stage }) => stage).toSorted((a, b) => a - b));
      }
    }), { numRuns: 40 });
  });
});
