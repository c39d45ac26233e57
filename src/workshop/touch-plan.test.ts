import { type PlannedKey, NO_SHIFTS, analyseTouch, planTouch } from '#action';
import { type ActionTermsDraft, type Reading, actionTermsSchema, quantityOf } from '#instrument';
import { describe, expect, it } from 'vitest';
import { demoShop } from './demo.ts';
import { touchInputOf } from './touch-input.ts';
import { type GatheredPlan, touchPlanInputOf } from './touch-plan.ts';

const [grand] = demoShop();
if (grand === undefined) throw new Error('the demo has a piano');
const { draft, steps, intent } = grand;
const instrument = { ...draft, firstMidi: 21, lastMidi: 108, sections: draft.sections ?? [] };
const stated = steps.flatMap((step) => (step.kind === 'action' ? [step.terms] : []))[0] ?? {};

const readings = steps.flatMap((step) => (step.kind === 'readings' ? step.batch.entries.map((entry, index): Reading => ({
  id: `${String(steps.indexOf(step))}/${String(index)}`, cycle: 1, state: step.batch.state, quantity: entry.quantity as Reading['quantity'], scope: entry.scope, index: entry.index, repeat: entry.repeat ?? 1,
  typed: entry.typed ?? null, value: entry.typed === undefined ? null : Number(entry.typed), outcome: entry.outcome ?? null, uncertainty: null, basis: 'measured', remark: '', sessionId: null, at: '', by: '',
})) : []));

function gather(terms: ActionTermsDraft | null, standing: readonly Reading[] = readings): GatheredPlan {
  const touch = analyseTouch(touchInputOf({ instrument, sessions: [], readings: standing, cycle: 1, state: 'found', intent }));
  return touchPlanInputOf({ instrument, readings: standing, cycle: 1, intent, terms: terms === null ? null : actionTermsSchema.parse(terms), touch });
}
const named = ({ assumed }: GatheredPlan): readonly string[] => assumed.map(({ what }) => what);

describe('the plan of the demo', () => {
  it('takes what the terms state, and says what it took instead where they are silent', () => {
    const [silent, told] = [gather(null), gather(stated)];
    expect(silent.keys).toHaveLength(88);
    expect(named(silent)).toEqual(expect.arrayContaining(['hammersAsFound', 'ratioAsFound', 'wippenAsFound', 'frictionFound', 'reachUnknown', 'massUnknown']));
    expect(named(told)).not.toEqual(expect.arrayContaining(['hammersAsFound']));
    expect(named(told)).not.toEqual(expect.arrayContaining(['frictionFound']));
    expect(told.keys.map(({ frictionG }) => frictionG).filter((value, index, all) => value !== all[index - 1])).toEqual([13, 11.5, 10.5]);
    expect(told.keys[0]?.hammerWeightG).toBeCloseTo(10.5, 9);
    expect(told.keys.every(({ reach, inertia, regulation }) => reach !== undefined && inertia !== undefined && regulation !== undefined)).toBe(true);
  });

  it('finds nearly the ratio by weights the invented levers have, and hits the target when leaded as told', () => {
    const keys: readonly PlannedKey[] = planTouch(gather(stated).keys, NO_SHIFTS);
    expect(keys.find(({ plan: { colour } }) => colour === 'natural')?.plan.weightRatio).toBeCloseTo(((117 / 228) * (96 / 65) * 130) / 17, 1);
    expect(keys.every(({ figures: { downWeightG } }) => Math.abs(downWeightG - 49) < 1e-9)).toBe(true);
  });

  it('reckons the bare key from its leads: as found, every key lies within the reach of its own leads', () => {
    const { keys } = gather(stated);
    expect(keys.filter(({ reach, found }) => (found.frontWeightG ?? 0) < (reach?.leastG ?? 0) - 1e-9)).toEqual([]);
    // The invented keys weigh 2.5 g in front without leads, their leads noted to half a millimetre.
    expect(keys.every(({ reach, found }) => Math.abs((reach?.leastG ?? 99) - 2.5) < 0.3 || (found.frontWeightG ?? 0) < 5)).toBe(true);
  });
});

describe('what is missing', () => {
  it('leaves a key out and names it: without arms all of a colour, without any weighed part no ratio', () => {
    const withoutArm = readings.filter(({ quantity, index }) => !(quantity === 'rollerMm' && index === 1));
    expect(gather(null, withoutArm)).toMatchObject({ missing: [{ what: 'arms', keys: expect.arrayContaining([2, 5]) }], keys: { length: 52 } });
    const unweighed = readings.filter(({ quantity }) => quantity !== 'frontWeightG');
    expect(gather(null, unweighed).missing).toMatchObject([{ what: 'ratio', keys: { length: 88 } }]);
    // Stated, it is taken; the arms never fill it in.
    expect(gather({ weightRatioNatural: 5.6, weightRatioSharp: 5.7 }, unweighed).keys).toHaveLength(88);
  });

  it('keeps the hammers as found where the curve rises, and says so', () => {
    const rising = gather({ hammerCurve: 'anchors', hammerAnchors: [{ key: 1, weightG: 5 }, { key: 40, weightG: 8 }, { key: 88, weightG: 5 }] });
    expect(rising.issues).toMatchObject([{ code: 'unsolvable', params: { reason: 'curveRises' } }]);
    expect(rising.keys[0]?.hammerWeightG).toBe(rising.keys[0]?.found.hammerWeightG);
  });

  it('plans every figure within what its quantity can be', () => {
    const [least, most] = quantityOf('frontWeightG').possible;
    expect(planTouch(gather(stated).keys, NO_SHIFTS).every(({ figures: { frontWeightG } }) => frontWeightG > least && frontWeightG < most)).toBe(true);
  });
});
