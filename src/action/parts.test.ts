import { runOperation } from '#operation';
import { mustBe } from '#result';
import { grams, millimetres, ratio } from '#units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  balanceFromPartsOf, balanceFromPartsOperation, frictionBudgetOf, frontWeightFor, frontWeightTargetOperation, leverRatiosOf, leverRatiosOperation, sectionWeightRatioOf, weightRatioOf, weightRatioOperation,
} from './index.ts';

const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const arms = fc.record({ keyFrontMm: positive(150, 300), keyBackMm: positive(70, 170), wippenHeelMm: positive(40, 100), wippenJackMm: positive(60, 130), rollerMm: positive(12, 24), hammerMm: positive(100, 150) });
const parts = fc.record({ hammerWeightG: positive(3, 15), wippenWeightG: positive(5, 40), helperSpringG: positive(0, 20) });
const scale = positive(0.01, 30);

const branded = (a: { [K in 'keyFrontMm' | 'keyBackMm' | 'wippenHeelMm' | 'wippenJackMm' | 'rollerMm' | 'hammerMm']: number }, c = 1) => ({
  keyFrontMm: millimetres(c * a.keyFrontMm), keyBackMm: millimetres(c * a.keyBackMm), wippenHeelMm: millimetres(c * a.wippenHeelMm),
  wippenJackMm: millimetres(c * a.wippenJackMm), rollerMm: millimetres(c * a.rollerMm), hammerMm: millimetres(c * a.hammerMm),
});

describe('lever ratios', () => {
  it('are the same in any unit of length', () => {
    fc.assert(fc.property(arms, scale, (a, c) => {
      const [one, other] = [leverRatiosOf(branded(a)), leverRatiosOf(branded(a, c))];
      for (const name of ['keyRatio', 'wippenRatio', 'hammerRatio', 'actionRatio'] as const) expect(other[name] / one[name]).toBeCloseTo(1, 12);
    }));
  });
});

describe('the balance of moments', () => {
  it('comes round: front weight for a target, then balance from those parts, by name', () => {
    fc.assert(fc.property(arms, parts, positive(20, 60), positive(0, 15), (levers, weights, balanceWeightG, frictionG) => {
      const { keyRatio, actionRatio } = mustBe(runOperation(leverRatiosOperation, levers));
      const aim = mustBe(runOperation(frontWeightTargetOperation, { ...weights, balanceWeightG, keyRatio, weightRatio: actionRatio, frictionG }));
      const back = mustBe(runOperation(balanceFromPartsOperation, { ...weights, levers, frontWeightG: aim.frontWeightG }));
      expect(back.balanceWeightG).toBeCloseTo(balanceWeightG, 9);
      const found = mustBe(runOperation(weightRatioOperation, { ...weights, ...aim, keyRatio }));
      expect(found.weightRatio).toBeCloseTo(actionRatio, 9);
    }));
  });

  it('scales with the grams and leaves the ratio alone', () => {
    fc.assert(fc.property(parts, positive(4, 7), positive(0.4, 0.6), positive(-10, 50), scale, (p, r, k, front, c) => {
      const at = (factor: number) => ({ hammerWeightG: grams(factor * p.hammerWeightG), wippenWeightG: grams(factor * p.wippenWeightG), helperSpringG: grams(factor * p.helperSpringG), frontWeightG: grams(factor * front), keyRatio: ratio(k) });
      const balance = balanceFromPartsOf({ ...at(1), actionRatio: ratio(r) });
      expect(Math.abs(balanceFromPartsOf({ ...at(c), actionRatio: ratio(r) }) - c * balance)).toBeLessThan(1e-10 * (1 + c) * 200);
      expect(weightRatioOf({ ...at(c), balanceWeightG: grams(c * balance) })).toBeCloseTo(r, 8);
      expect(frontWeightFor({ ...at(1), balanceWeightG: balance, weightRatio: ratio(r) })).toBeCloseTo(front, 9);
    }));
  });

  it('keeps a section’s ratio through three gross outliers in fifteen', () => {
    const ratios = Array.from({ length: 15 }, (_, index) => ratio(index < 3 ? 9 : 6 + (index - 9) / 100));
    expect(sectionWeightRatioOf(ratios)).toBeCloseTo(6, 1);
  });

  it('gives a section’s median and every note', () => {
    const note = { downWeightG: 49, upWeightG: 26, frontWeightG: 25, hammerWeightG: 9.2, wippenWeightG: 18, keyRatio: 0.5 };
    const heavier = { ...note, frontWeightG: 30 };
    const answer = mustBe(runOperation(weightRatioOperation, { notes: [note, heavier, heavier] }));
    const [one, two] = [(37.5 + 25 - 9) / 9.2, (37.5 + 30 - 9) / 9.2];
    expect(answer).toEqual({ weightRatio: two, median: two, perNote: [one, two, two] });
    expect(runOperation(weightRatioOperation, note)).toEqual({ ok: true, value: { weightRatio: one } });
  });

  it('names the note and the field of what cannot be', () => {
    const note = { downWeightG: 49, upWeightG: 26, frontWeightG: 25, hammerWeightG: 9.2, wippenWeightG: 18, keyRatio: 0.5 };
    const issues = (raw: unknown) => {
      const result = runOperation(weightRatioOperation, raw);
      return result.ok ? [] : result.issues.map(({ code, path }) => `${code} ${path}`);
    };
    expect(issues({ notes: [note, { ...note, upWeightG: 50 }, { ...note, frontWeightG: -40 }] })).toEqual(['order notes[1].upWeightG', 'range notes[2].frontWeightG']);
    expect(issues({ ...note, frontWeightG: -28.5 })).toEqual(['range frontWeightG']);
    expect(issues({ ...note, frontWeightG: -28.4 })).toEqual([]);
    const { downWeightG: _, ...without } = note;
    expect(issues(without)).toEqual(['required downWeightG']);
    expect(issues({ ...note, downWieghtG: 1 })).toEqual(['unknown downWieghtG']);
  });

  it('refuses a friction the key could not return against', () => {
    const result = runOperation(frontWeightTargetOperation, { balanceWeightG: 10, hammerWeightG: 9, wippenWeightG: 18, keyRatio: 0.5, weightRatio: 5.5, frictionG: 11 });
    expect(result).toMatchObject({ ok: false, issues: [{ code: 'order', path: 'frictionG' }] });
  });
});

describe('the friction budget', () => {
  const sources = { levers: branded({ keyFrontMm: 225, keyBackMm: 115, wippenHeelMm: 65, wippenJackMm: 96, rollerMm: 17, hammerMm: 130 }), keyFrictionG: 2, hammerWeightG: 9.2, wippenWeightG: 18, wippenTorqueGMm: 60, hammerTorqueGMm: 70, capstanFriction: 0.2, capstanOffsetMm: 2, rollerFriction: 0.3, rollerOffsetMm: 6 } as unknown as Parameters<typeof frictionBudgetOf>[0];
  const names = ['keyG', 'wippenG', 'hammerG', 'capstanG', 'rollerG', 'totalG'] as const;

  it('scales with grams, and not with the unit of length', () => {
    fc.assert(fc.property(scale, scale, (c, l) => {
      const scaled = {
        ...sources,
        levers: branded(sources.levers, l),
        keyFrictionG: c * sources.keyFrictionG, hammerWeightG: c * sources.hammerWeightG, wippenWeightG: c * sources.wippenWeightG,
        wippenTorqueGMm: c * l * sources.wippenTorqueGMm, hammerTorqueGMm: c * l * sources.hammerTorqueGMm,
        capstanOffsetMm: l * sources.capstanOffsetMm, rollerOffsetMm: l * sources.rollerOffsetMm,
      } as unknown as typeof sources;
      const [one, other] = [frictionBudgetOf(sources), frictionBudgetOf(scaled)];
      for (const name of names) expect(other[name] / one[name] / c).toBeCloseTo(1, 10);
    }));
  });

  it('is the work lost over a millimetre of key travel', () => {
    const { levers } = sources;
    const { keyRatio, wippenRatio, hammerRatio, actionRatio } = leverRatiosOf(levers);
    const turnOf = { key: 1 / levers.keyFrontMm, wippen: keyRatio / levers.wippenHeelMm, hammer: actionRatio / levers.hammerMm };
    expect(turnOf.hammer * levers.rollerMm).toBeCloseTo(turnOf.wippen * levers.wippenJackMm, 12);
    const roller = sources.hammerWeightG * hammerRatio;
    const capstan = roller * wippenRatio + sources.wippenWeightG;
    const budget = frictionBudgetOf(sources);
    const lostG = 60 * turnOf.wippen + 70 * turnOf.hammer + 0.3 * roller * 6 * (turnOf.hammer + turnOf.wippen) + 0.2 * capstan * 2 * (turnOf.wippen + turnOf.key) + 2;
    expect(budget.totalG).toBeCloseTo(lostG, 12);
  });

  it('is nought where nothing rubs', () => {
    const smooth = { ...sources, keyFrictionG: 0, wippenTorqueGMm: 0, hammerTorqueGMm: 0, capstanFriction: 0, rollerOffsetMm: 0 } as unknown as typeof sources;
    expect(frictionBudgetOf(smooth)).toEqual({ keyG: 0, wippenG: 0, hammerG: 0, capstanG: 0, rollerG: 0, totalG: 0 });
  });
});
