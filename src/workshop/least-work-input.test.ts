import { type KeyFigures, type TouchInput, analyseTouch, leastWork } from '#action';
import { type ActionTermsDraft, type KeyNumber, actionTermsSchema, benchSetUps, compass88, keysOf } from '#instrument';
import { mustBe } from '#result';
import { grams } from '#units';
import { describe, expect, it } from 'vitest';
import { jobsOf, usualMinutes, usualSetUpMinutes } from './bench-jobs.ts';
import { type WorkMaterial, leastWorkInputOf } from './least-work-input.ts';
import { leastWorkJobs } from './least-work-jobs.ts';
import { workItemDraftSchema } from './records.ts';

const INTENT = { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG: 20 } as const;
const measured = (value: number, u?: number) => ({ value: grams(value), count: 1, ...(u === undefined ? {} : { standardUncertaintyG: grams(u) }) });
const weights = (down: number, up: number, u?: number) => ({ downWeightG: measured(down, u), upWeightG: measured(up, u) });
const TIMED: ActionTermsDraft = {
  operationMinutes: jobsOf('grand').map((operation) => ({ operation, minutes: usualMinutes[operation] })),
  setUpMinutes: benchSetUps.map((setUp) => ({ setUp, minutes: usualSetUpMinutes[setUp] })),
};

/** A grand, even but for the keys given, every part weighed. */
function grand(change: Readonly<Record<number, Partial<KeyFigures>>>, terms: ActionTermsDraft | null = TIMED, more: Partial<TouchInput> & Partial<WorkMaterial> = {}): WorkMaterial {
  const intent = more.intent ?? INTENT;
  const touch = analyseTouch({
    kind: 'grand', compass: compass88, rule: 'interpolated', intent,
    arms: { natural: { keyFrontMm: 225, keyBackMm: 115 }, sharp: { keyFrontMm: 190, keyBackMm: 101 } },
    keys: keysOf(compass88).map((key): KeyFigures => ({ key, ...weights(49, 25), frontWeightG: measured(24), hammerWeightG: measured(9), wippenWeightG: measured(18), ...change[key] })),
    ...(more.kind === undefined ? {} : { kind: more.kind }),
  });
  return { instrument: { kind: more.kind ?? 'grand', firstMidi: 21, lastMidi: 108 }, readings: more.readings ?? [], cycle: 1, intent, terms: terms === null ? null : actionTermsSchema.parse(terms), touch };
}
const gather = (...args: Parameters<typeof grand>) => leastWorkInputOf(grand(...args));
const amountsOf = (gathered: ReturnType<typeof gather>, key: KeyNumber) => Object.fromEntries(gathered.problem?.keys.find((one) => one.key === key)?.amounts?.map(({ operation, ...amount }) => [operation, amount]) ?? []);
const off = (gathered: ReturnType<typeof gather>, key: KeyNumber): Readonly<Record<string, number>> => Object.fromEntries(Object.entries(amountsOf(gathered, key)).flatMap(([name, amount]) => ('changeG' in amount ? [[name, amount.changeG]] : [])));
const assumedOf = (gathered: ReturnType<typeof gather>, what: string) => gathered.assumed.find((one) => one.what === what)?.keys;

describe('the question of the least work', () => {
  it('takes friction above the usual out of the key as far as it was weighed there', () => {
    // 57/21: friction 18, usual 12, so 6 too much; 5 of the key's 8 are above the 3 a free key has.
    const friction = off(gather({ 40: { ...weights(57, 21), keyFrictionG: measured(8) } }), 40);
    expect(friction['easeKeyBushing']).toBeCloseTo(-5, 9);
    expect(friction['cleanKeyPins']).toBeCloseTo(-2.5, 9);
    expect((friction['repinWippen'] ?? 0) + (friction['repinHammer'] ?? 0) + (friction['replaceRoller'] ?? 0)).toBeCloseTo(-1, 9);
  });

  it('spreads what no weighing tells apart as friction usually is, in sum no more than there is, and says so', () => {
    const gathered = gather({ 40: weights(57, 21) });
    const friction = off(gathered, 40);
    expect((friction['easeKeyBushing'] ?? 0) + (friction['repinWippen'] ?? 0) + (friction['repinHammer'] ?? 0) + (friction['replaceRoller'] ?? 0)).toBeCloseTo(-6, 9);
    expect(assumedOf(gathered, 'keyFrictionUnweighed')).toEqual([40]);
    expect(assumedOf(gathered, 'excessUsual')).toEqual([40]);
  });

  it('puts it where the shop says it sits', () => {
    const at = (excessSits: 'key' | 'centres' | 'roller') => off(gather({ 40: weights(57, 21) }, { ...TIMED, excessSits }), 40);
    expect(at('key')['rebushKey']).toBeCloseTo(-6, 9);
    expect((at('centres')['repinWippen'] ?? 0) + (at('centres')['repinHammer'] ?? 0)).toBeCloseTo(-6, 9);
    expect(at('roller')['replaceRoller']).toBeCloseTo(-6, 9);
    expect(at('roller')['repinHammer']).toBe(0);
  });

  it('offers work that frees nothing only where it renews, to be counted where everything is replaced', () => {
    const friction = off(gather({}), 40);
    expect(friction).toEqual({ rebushKey: 0, repinWippen: 0, repinHammer: 0, replaceRoller: 0 });
  });

  it('puts in no minutes that were not stated: such jobs are not offered, such set-ups count none, both named', () => {
    expect(gather({}, null).problem).toBeUndefined();
    const gathered = gather({ 40: weights(57, 21) }, { operationMinutes: [{ operation: 'easeKeyBushing', minutes: 2 }], setUpMinutes: [{ setUp: 'keysOut', minutes: 20 }] });
    expect(gathered.problem?.operations.map(({ name, setups }) => [name, setups])).toEqual([['easeKeyBushing', ['keysOut']]]);
    expect(gathered.untimed.operations).toHaveLength(13);
    expect(gathered.untimed.setUps).toEqual(['actionOut', 'stackOff', 'weighing']);
  });

  it('names the keys that gave no number or contradict themselves, and leaves them out', () => {
    const gathered = gather({ 3: { outcome: 'sticks' }, 5: weights(40, 45), 7: { downWeightG: undefined, upWeightG: undefined } });
    expect(gathered.left).toEqual([{ why: 'outcome', keys: [3] }, { why: 'upAboveDown', keys: [5] }, { why: 'unweighed', keys: [7] }]);
    expect(gathered.problem?.keys).toHaveLength(85);
  });

  it('leaves room for the doubt where it is asked, known, and narrower than the tolerance, register by register', () => {
    const sure = Object.fromEntries(keysOf(compass88).map((key) => [key, weights(49, 25, 0.3)]));
    const guards = (gathered: ReturnType<typeof gather>) => [10, 40, 80].map((key) => gathered.problem?.keys.find((one) => one.key === key)?.guardG);
    const doubting = { ...TIMED, workRoom: 'doubt' } as const;
    expect(guards(gather(sure))).toEqual([undefined, undefined, undefined]);
    expect(guards(gather(sure, doubting))).toEqual([0.6, 0.6, 0.6]);
    const middling = gather({ ...sure, 40: weights(49, 25, 1.2), 80: weights(49, 25, 0.5) }, doubting);
    expect(guards(middling)).toEqual([0.6, undefined, 1]);
    expect(middling.rooms).toEqual([{ register: 'bass', doubtG: 0.6, guardG: 0.6 }, { register: 'middle', doubtG: 2.4 }, { register: 'treble', doubtG: 1, guardG: 1 }]);
    expect(gather({ ...sure, 40: weights(49, 25) }, doubting).rooms[1]).toEqual({ register: 'middle' });
  });

  it('keeps lead from hiding friction where friction is to be usual, and says when nothing does', () => {
    const asked = { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG: 0 } as const;
    const open = gather({ 40: weights(57, 21) }, TIMED, { intent: asked });
    expect(assumedOf(open, 'noLeastUp')).toHaveLength(88);
    expect(mustBe(leastWork(mustHave(open.problem))).keys.find(({ key }) => key === 40)?.work.every(({ changes }) => changes === 'front')).toBe(true);
    const held = gather({ 40: weights(57, 21) }, { ...TIMED, frictionLimit: 'usual' }, { intent: asked });
    const plan = mustBe(leastWork(mustHave(held.problem))).keys.find(({ key }) => key === 40);
    expect(plan?.after.frictionG).toBeLessThanOrEqual(15 + 1e-9);
  });

  it('holds friction to what is planned of its register where that is asked, and says where nothing is planned', () => {
    const held = gather({ 40: weights(57, 21) }, { ...TIMED, frictionLimit: 'planned', frictionBassG: 14, frictionMiddleG: 12.5 });
    expect([10, 40, 80].map((key) => held.problem?.keys.find((one) => one.key === key)?.frictionToG)).toEqual([16, 14.5, undefined]);
    expect(assumedOf(held, 'noPlannedFriction')).toEqual(keysOf(compass88).filter((key) => key > 60));
  });

  it('counts parts by the prices of the shop, and names those without', () => {
    const priced = gather({ 40: weights(57, 21) }, { ...TIMED, currency: 'EUR', partPrices: [{ part: 'hammerPin', priceMinor: 15 }] });
    expect(priced.unpriced).toEqual(['bushing', 'wippenPin', 'roller', 'hammer', 'lead']);
    const plan = mustBe(leastWork(mustHave(priced.problem)));
    expect(plan.replaceAll.partsMinor).toBe(15 * plan.keys.length);
    expect(gather({}, TIMED).problem?.operations.every(({ partsMinor }) => partsMinor === undefined)).toBe(true);
  });

  it('offers an upright no work on rollers or on parts that were not weighed', () => {
    const bare = Object.fromEntries(keysOf(compass88).map((key) => [key, { hammerWeightG: undefined, wippenWeightG: undefined }]));
    const gathered = gather({ ...bare, 40: weights(57, 21) }, TIMED, { kind: 'upright' });
    expect(gathered.problem?.operations.some(({ name }) => name.endsWith('Roller'))).toBe(false);
    expect(amountsOf(gathered, 40)).not.toHaveProperty('trimHammer');
  });
});

describe('the plan as jobs', () => {
  it('are jobs of the list of work, by stage and bass to treble, each with what to weigh again', () => {
    const gathered = gather({ 40: weights(57, 21), 50: weights(55, 31), 12: weights(56, 20) });
    const plan = mustBe(leastWork(mustHave(gathered.problem)));
    const jobs = leastWorkJobs(plan, 2, ({ key }) => `key ${String(key)}`);
    expect(jobs).toHaveLength(plan.keys.reduce((sum, { work }) => sum + work.length, 0));
    expect(jobs.map(({ stage }) => stage)).toEqual(jobs.map(({ stage }) => stage).toSorted((a, b) => a - b));
    for (const job of jobs) expect(workItemDraftSchema.parse(job)).toMatchObject({ cycle: 2, cause: 'leastWork', remark: `key ${String(job.key)}` });
    expect(jobs.every(({ remeasure }) => remeasure?.includes('upWeightG'))).toBe(true);
  });
});

function mustHave<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('nothing there');
  return value;
}
