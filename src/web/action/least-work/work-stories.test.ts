import { type KeyFigures, analyseTouch, leastWork, leastWorkOperation } from '#action';
import { actionTermsSchema, benchSetUps, compass88, keysOf } from '#instrument';
import { runOperation } from '#operation';
import { mustBe } from '#result';
import { grams } from '#units';
import { jobsOf, leastWorkInputOf, usualMinutes, usualSetUpMinutes } from '#workshop';
import { describe, expect, it } from 'vitest';
import { canOpenKey, keyStory, planStory } from './work-stories.ts';
import { workFormOf, workTermsOf } from './work-terms.ts';

const measured = (value: number) => ({ value: grams(value), count: 1 });
const intent = { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG: 20 } as const;
const terms = actionTermsSchema.parse({
  operationMinutes: jobsOf('grand').map((operation) => ({ operation, minutes: usualMinutes[operation] })),
  setUpMinutes: benchSetUps.map((setUp) => ({ setUp, minutes: usualSetUpMinutes[setUp] })),
});
/** Keys that lean further and further from even, each its own way. */
const touch = analyseTouch({
  kind: 'grand', compass: compass88, rule: 'interpolated', intent, arms: { natural: { keyFrontMm: 225, keyBackMm: 115 }, sharp: { keyFrontMm: 190, keyBackMm: 101 } },
  keys: keysOf(compass88).map((key): KeyFigures => ({
    key, downWeightG: measured(49 + ((key * 7) % 11) - 3), upWeightG: measured(25 - ((key * 5) % 7)), frontWeightG: measured(24), hammerWeightG: measured(9), wippenWeightG: measured(18),
  })),
});
const { problem } = leastWorkInputOf({ instrument: { kind: 'grand', firstMidi: 21, lastMidi: 108 }, readings: [], cycle: 1, intent, terms, touch });
if (problem === undefined) throw new Error('no question');
const plan = mustBe(leastWork(problem));
const behind = { problem, touch, readings: [] };

describe('figures of the least work', () => {
  it('open to the same minutes, for the whole keyboard', () => {
    expect(mustBe(runOperation(leastWorkOperation, planStory('', 'minutes', behind).input)).minutes).toBe(plan.minutes);
  });

  it('open to the work the key has in the whole plan, though asked of the key alone', () => {
    const openable = plan.keys.filter((own) => canOpenKey(own, plan, problem));
    expect(openable.filter(({ verdict }) => verdict === 'planned').length).toBeGreaterThan(20);
    for (const own of openable) {
      const [alone] = mustBe(runOperation(leastWorkOperation, keyStory('', own.key, plan, behind)?.input)).keys;
      expect(alone).toMatchObject({ key: own.key, work: own.work, after: own.after });
    }
  });
});

describe('the minutes of the shop as typed', () => {
  it('come back as they were stated, in the figures of the reader', () => {
    expect(workFormOf(terms, 'de').minutes.easeKeyBushing).toBe('1,5');
    expect(mustBe(workTermsOf(workFormOf(terms, 'de'), terms, 'de'))).toMatchObject({ operationMinutes: terms.operationMinutes, setUpMinutes: terms.setUpMinutes });
  });

  it('are refused by name where they cannot be', () => {
    const form = workFormOf(null, 'en');
    const refused = workTermsOf({ ...form, minutes: { ...form.minutes, addLead: '-3', trimHammer: 'five' } }, null, 'en');
    expect(refused.ok ? [] : refused.issues.map(({ path }) => path).toSorted()).toEqual(['minutes.addLead', 'minutes.trimHammer']);
  });
});
