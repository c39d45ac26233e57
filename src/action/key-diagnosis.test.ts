import { runOperation } from '#operation';
import { mustBe } from '#result';
import { describe, expect, it } from 'vitest';
import { stageOfRemedy, touchDiagnosisOperation } from './index.ts';

const target = { weightRatio: 5.5, hammerWeightG: 9, wippenWeightG: 18, frontWeightG: 24.8, frictionG: 12 };
const keyRatio = 0.5;

/** Down and up weight that the parts give, so that only what is changed departs. */
function keyWith(changed: Partial<typeof target> = {}) {
  const { weightRatio, frictionG, ...parts } = { ...target, ...changed };
  const balance = weightRatio * parts.hammerWeightG + keyRatio * parts.wippenWeightG - parts.frontWeightG;
  return { ...parts, keyRatio, downWeightG: balance + frictionG, upWeightG: balance - frictionG, target };
}
const diagnose = (raw: unknown) => mustBe(runOperation(touchDiagnosisOperation, raw));
const causesOf = (raw: unknown): readonly string[] => diagnose(raw).causes.map(({ cause }) => cause);

describe('the diagnosis of one key', () => {
  it('finds nothing where nothing departs', () => {
    expect(diagnose(keyWith())).toMatchObject({ causes: [], remedies: [], cancelling: false, withinUncertainty: [] });
  });

  it.each([
    [{ frictionG: 15 }, ['frictionHigh']],
    [{ frictionG: 9 }, ['frictionLow']],
    [{ weightRatio: 5.8 }, ['ratioHigh']],
    [{ weightRatio: 5.2 }, ['ratioLow']],
    [{ hammerWeightG: 9.5 }, ['hammerHeavy']],
    [{ hammerWeightG: 8.5 }, ['hammerLight']],
    [{ wippenWeightG: 22 }, ['wippenHeavy']],
    [{ wippenWeightG: 14 }, ['wippenLight']],
    [{ frontWeightG: 22 }, ['frontLight']],
    [{ frontWeightG: 28 }, ['frontHeavy']],
    [{ frictionG: 13.4 }, []],
    [{ frontWeightG: 20, frictionG: 15, hammerWeightG: 9.5, weightRatio: 5.8, wippenWeightG: 22 }, ['frictionHigh', 'ratioHigh', 'wippenHeavy', 'hammerHeavy', 'frontLight']],
  ])('names %j as %j, in the order of the work', (changed, causes) => {
    expect(causesOf(keyWith(changed))).toEqual(causes);
  });

  it('lists remedies friction first, ratio second, hammer third, lead last, none twice', () => {
    const { remedies } = diagnose(keyWith({ frontWeightG: 20, frictionG: 15, hammerWeightG: 9.5, weightRatio: 5.8, wippenWeightG: 22 }));
    const stages = remedies.map((remedy) => stageOfRemedy(remedy as Parameters<typeof stageOfRemedy>[0]));
    expect(stages).toEqual([...stages].sort((a, b) => a - b));
    expect([stages[0], stages.at(-1)]).toEqual([1, 4]);
    expect(new Set(remedies).size).toBe(remedies.length);
  });

  it('tells faults that hide each other: 49/13 g reads as a good down weight', () => {
    const key = { downWeightG: 49, upWeightG: 13, frontWeightG: 30.2, hammerWeightG: 9, wippenWeightG: 18, keyRatio };
    const answer = diagnose({ ...key, target: { ...target, weightRatio: (31 + 30.2 - 9) / 9 } });
    expect(answer.shares.frictionG).toBeCloseTo(6, 12);
    expect(answer.shares.frontG).toBeCloseTo(-5.4, 12);
    expect(answer.downWeightChangeG).toBeCloseTo(0.6, 9);
    expect(answer.cancelling).toBe(true);
    expect(answer.causes.map(({ cause }) => cause)).toEqual(['frictionHigh', 'frontHeavy', 'cancelling']);
    expect(answer.causes.at(-1)?.amountG).toBeCloseTo(5.4, 12);
  });

  it('does not call it hiding when the down weight shows it', () => {
    expect(diagnose(keyWith({ frictionG: 20, frontWeightG: 27 }))).toMatchObject({ cancelling: false, causes: [{ cause: 'frictionHigh' }, { cause: 'frontHeavy' }] });
  });

  it('does not act on what its own uncertainty covers, and says so', () => {
    const key = keyWith({ hammerWeightG: 9.4 });
    expect(causesOf(key)).toEqual(['hammerHeavy']);
    const doubtful = diagnose({ ...key, stepG: 1, scaleUncertaintyG: 0.5 });
    expect(doubtful).toMatchObject({ causes: [], remedies: [], withinUncertainty: ['hammerHeavy'] });
  });

  it('asks for the friction of the key alone, and needs no asking once it is known', () => {
    const heavy = keyWith({ frictionG: 18 });
    expect(diagnose(heavy).remedies[0]).toBe('measureKeyFriction');
    expect(diagnose({ ...heavy, keyFrictionG: 8 }).remedies[0]).toBe('cleanKeyPins');
    expect(diagnose({ ...heavy, keyFrictionG: 3 }).remedies[0]).toBe('repinCentres');
  });
});
