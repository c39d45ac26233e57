import { analyseUpright } from '#action';
import { type QuantityName, type Reading, actionTermsSchema, touchIntentSchema } from '#instrument';
import { describe, expect, it } from 'vitest';
import { uprightInputOf } from './index.ts';
import { readingOf } from './testing/leaded-keys.ts';

const ARMS = [['keyFrontMm', 225], ['keyBackMm', 99], ['wippenHeelMm', 60], ['wippenJackMm', 90], ['hammerMm', 142.9]] as const satisfies readonly (readonly [QuantityName, number])[];
const READ = [['downWeightG', 54], ['upWeightG', 24], ['frontWeightG', 2], ['hammerWeightG', 8], ['wippenWeightG', 35], ['damperG', 25], ['springTorqueGMm', 60]] as const satisfies readonly (readonly [QuantityName, number])[];
const arms: readonly Reading[] = [0, 1].flatMap((colour) => ARMS.map(([name, value]) => readingOf(['colour', colour, name, value])));
const read: readonly Reading[] = READ.map(([name, value]) => readingOf(['key', 40, name, value]));
const intent = touchIntentSchema.parse({ even: 'downWeight', targetG: 50, toleranceG: 3, upWeightMinG: 20 });
const gather = (readings: readonly Reading[], terms: Parameters<typeof actionTermsSchema.parse>[0] = null, rest: Partial<Parameters<typeof uprightInputOf>[0]> = {}) =>
  uprightInputOf({ instrument: { firstMidi: 21, lastMidi: 108 }, readings, cycle: 1, state: 'found', terms: terms === null ? null : actionTermsSchema.parse(terms), intent: null, ...rest });

describe('what the touch of an upright is worked out from', () => {
  it('works out balance, shares and plan once arms, butt, tilt and intent are known', () => {
    const { input, missing, assumed } = gather([...arms, ...read], { buttMm: 20, tiltDeg: 15, plannedSpringTorqueGMm: 60 }, { intent });
    const key = analyseUpright(input)[39];
    expect([missing, assumed]).toEqual([[], ['damperOfRegister', 'dampersOff']]);
    expect(key?.byParts?.actionRatio).toBeCloseTo((99 / 225) * (90 / 60) * (142.9 / 20), 12);
    expect([key?.plan?.downWeightG, key?.plan?.balanceWeightG]).toEqual([50, 35]);
  });

  it('names what is missing and fills nothing in', () => {
    const { input, missing } = gather([...arms.filter(({ quantity }) => quantity !== 'wippenJackMm'), ...read.filter(({ quantity }) => quantity !== 'damperG')]);
    expect(missing).toEqual(['wippenJackMm', 'buttMm', 'tiltDeg', 'damperG', 'intent']);
    expect(input.arms).toEqual({});
  });

  it('takes arms that were not measured again as found, and says so', () => {
    const finished = read.map((one): Reading => ({ ...one, state: 'finished' }));
    const { input, assumed } = gather([...arms, ...finished], { buttMm: 20 }, { state: 'finished' });
    expect(input.arms.natural?.wippenHeelMm).toBe(60);
    expect(assumed).toContain('armsAsFound');
  });
});
