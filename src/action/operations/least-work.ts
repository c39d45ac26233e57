import { defineOperation, field } from '#operation';
import { map } from '#result';
import { z } from 'zod';
import { MOST_SETUPS } from '../least-work/check.ts';
import { leastWork } from '../least-work/least-work.ts';
import { type LeastWork, type WorkDone, changeKinds } from '../least-work/problem.ts';
import { fields } from '../schemas.ts';

/** No piano has more keys, no list that is tried in every combination more operations. */
const MOST_KEYS = 128;
const MOST_OPERATIONS = 40;
const MOST_MINUTES = 100_000;

const name = (describe: string) => z.string().min(1).max(80).describe(describe);
const change = (describe: string) => field.grams({ min: -10_000, max: 10_000, describe });
const ratioChange = (describe: string) => field.ratio({ min: -1000, max: 1000, describe });
const limit = (describe: string) => field.grams({ min: 0, max: 10_000, describe }).optional();
const minutes = (describe: string) => field.number({ min: 0, max: MOST_MINUTES, describe });
const kind = z.enum(changeKinds);

const friction = { changeG: change('Change of friction, as estimated; negative frees the key'), uncertaintyG: limit('How far it may turn out either way; the key is inside either way') } as const;
const weight = { fromG: change('Least change of hammer or front weight'), toG: change('Largest change'), stepG: field.grams({ min: 0.001, max: 10_000, describe: 'Step from the least on; without it any amount' }).optional() } as const;
const ratio = { fromRatio: ratioChange('Least change of the ratio by weights'), toRatio: ratioChange('Largest change') } as const;
const named = { operation: name('Name of the operation') } as const;

const limits = {
  minUpWeightG: limit('Least up weight'), frictionFromG: limit('Least friction'), frictionToG: limit('Largest friction'),
  targetG: limit('Down weight or balance weight wanted'), guardG: limit('Room left inside every limit for the doubt of the weighings'),
} as const;

const operationSchema = z.strictObject({
  name: name('Name, once'),
  changes: kind.describe('What it changes at the key; also its stage of the bench'),
  minutes: minutes('At one key, without set-ups'),
  partsMinor: field.count({ max: 100_000_000, describe: 'Parts for one key, in the smallest unit of money' }).optional(),
  setups: z.array(name('A set-up it needs')).max(MOST_SETUPS).optional(),
  group: name('Of operations of one group a key gets one at most').optional(),
  renews: z.boolean().describe('Belongs to the plan that replaces everything').optional(),
  amount: z.union([z.strictObject(friction), z.strictObject(weight), z.strictObject(ratio)]).describe('At every key that states none of its own; without either it is not offered').optional(),
});

const keySchema = z.strictObject({
  key: field.count({ min: 1, max: MOST_KEYS }),
  downWeightG: fields.downWeightG,
  upWeightG: fields.upWeightG,
  parts: z.strictObject({
    hammerWeightG: fields.hammerWeightG, wippenWeightG: fields.wippenWeightG, frontWeightG: fields.frontWeightG, helperSpringG: fields.helperSpringG.optional(), keyRatio: fields.keyRatio,
  }).describe('Needed where hammer or ratio may change').optional(),
  amounts: z.array(z.union([z.strictObject({ ...named, ...friction }), z.strictObject({ ...named, ...weight }), z.strictObject({ ...named, ...ratio })])).max(MOST_OPERATIONS).describe('Amounts of this key, before those of the operations').optional(),
  without: z.array(name('An operation that is not to be done here')).max(MOST_OPERATIONS).optional(),
  ...limits,
});

const work = z.array(z.strictObject({ operation: z.string(), changes: kind, changeG: field.grams().optional(), ratioChange: field.ratio().optional(), minutes: field.number(), partsMinor: field.count() }));
const state = z.strictObject({
  downWeightG: field.grams(), upWeightG: field.grams(), balanceWeightG: field.grams(), frictionG: field.grams(),
  frontWeightG: field.grams().optional(), hammerWeightG: field.grams().optional(), weightRatio: field.ratio().optional(),
});
const keyList = z.array(field.count());
const naive = z.strictObject({
  minutes: field.number(), partsMinor: field.count(), setups: z.array(z.string()), inside: field.count({ describe: 'Keys it brings inside' }),
  outside: z.array(z.strictObject({ key: field.count(), missG: field.grams(), because: z.enum(['friction', 'reach']) })),
});

const inputSchema = z.strictObject({
  keys: z.array(keySchema).min(1).max(MOST_KEYS).describe('Keys as found'),
  operations: z.array(operationSchema).min(1).max(MOST_OPERATIONS).describe('What the shop does, with its own minutes'),
  setups: z.array(z.strictObject({ name: name('Name, once'), minutes: minutes('Once for all keys') })).max(MOST_SETUPS).describe('Work done once for all keys that need it').optional(),
  target: z.strictObject({
    quantity: z.enum(['downWeight', 'balanceWeight']), toleranceG: field.grams({ min: 0, max: 10_000, describe: 'Either side of the target' }), ...limits,
  }).describe('What every key must come to; figures of a key win'),
});

const outputSchema = z.strictObject({
  minutes: field.number({ describe: 'Work and set-ups' }),
  lowerBoundMinutes: field.number({ describe: 'No set of the named work takes fewer' }),
  proven: z.boolean(),
  partsMinor: field.count(),
  setups: z.array(z.strictObject({ name: z.string(), minutes: field.number(), keys: keyList })),
  stages: z.array(z.strictObject({ changes: kind, minutes: field.number(), partsMinor: field.count(), operations: z.array(z.strictObject({ operation: z.string(), keys: keyList, minutes: field.number(), partsMinor: field.count() })) })).describe('By stage of the bench: friction, ratio, hammer, lead'),
  keys: z.array(z.strictObject({
    key: field.count(), verdict: z.enum(['already', 'planned', 'outOfReach']), work, minutes: field.number(), partsMinor: field.count(), after: state,
    marginG: field.grams({ describe: 'To the nearest limit; negative outside' }),
    outOfReach: z.strictObject({
      missG: field.grams(), nearest: work.describe('Work that comes nearest'), after: state,
      wouldReach: z.array(z.strictObject({ changes: kind, changeG: field.grams().optional(), ratioChange: field.ratio().optional(), alone: z.boolean().describe('By itself, or on top of the nearest work') })),
    }).optional(),
  })),
  already: field.count({ describe: 'Keys inside as found' }), planned: field.count({ describe: 'Keys brought inside' }), outOfReach: keyList.describe('Keys that no named work brings inside'),
  replaceAll: naive.describe('For comparison: everything renewed at every key'), leadOnly: naive.describe('For comparison: lead alone'),
});

/** The work that brings every key inside in the fewest minutes, proven. */
export const leastWorkOperation = defineOperation({
  name: 'least-work',
  input: inputSchema,
  output: outputSchema,
  formula: [
    'min Σ minutes(operations) + Σ minutes(set-ups they need)',
    'BW′ = (R + ΔR)·(SW + ΔSW) + K·WW − FW − ΔFW − S',
    'F′ = F + Σ ΔF; DW′ = BW′ + F′; UW′ = BW′ − F′, inside all limits',
    'exact: every set of operations at every key, every set of set-ups',
  ],
  sources: ['OWN', 'PRACTICE'],
  example: {
    keys: [
      { key: 40, downWeightG: 56, upWeightG: 24, parts: { frontWeightG: 25, hammerWeightG: 9, wippenWeightG: 18, keyRatio: 0.51 }, amounts: [{ operation: 'ease bushing', changeG: -4 }] },
      { key: 41, downWeightG: 54, upWeightG: 31, parts: { frontWeightG: 20, hammerWeightG: 9, wippenWeightG: 18, keyRatio: 0.53 } },
      { key: 42, downWeightG: 49, upWeightG: 26, parts: { frontWeightG: 25, hammerWeightG: 9, wippenWeightG: 18, keyRatio: 0.51 } },
    ],
    operations: [
      { name: 'ease bushing', changes: 'friction', minutes: 2, setups: ['keys off'] },
      { name: 'trim hammer', changes: 'hammer', minutes: 5, setups: ['stack off'], amount: { fromG: -0.6, toG: 0 } },
      { name: 'add lead', changes: 'front', minutes: 8, partsMinor: 40, setups: ['keys off'], amount: { fromG: 0, toG: 12 } },
    ],
    setups: [{ name: 'keys off', minutes: 15 }, { name: 'stack off', minutes: 25 }],
    target: { quantity: 'downWeight', targetG: 49, toleranceG: 2, minUpWeightG: 21 },
  },
  run: (problem) => map(leastWork(problem), shown),
});

type Shown = z.output<typeof outputSchema>;

const list = <T>(items: readonly T[]): T[] => [...items];
const workList = (done: readonly WorkDone[]): Shown['keys'][number]['work'] => done.map((one) => ({ ...one }));

function shown({ setups, stages, keys, outOfReach, replaceAll, leadOnly, ...rest }: LeastWork): Shown {
  const naivePlan = (plan: LeastWork['replaceAll']): Shown['replaceAll'] => ({ ...plan, setups: list(plan.setups), outside: list(plan.outside) });
  return {
    ...rest,
    setups: setups.map((setup) => ({ ...setup, keys: list(setup.keys) })),
    stages: stages.map((stage): Shown['stages'][number] => ({ ...stage, operations: stage.operations.map((one) => ({ ...one, keys: list(one.keys) })) })),
    keys: keys.map(({ work: done, outOfReach: miss, ...key }) => ({
      ...key, work: workList(done), ...(miss === undefined ? {} : { outOfReach: { ...miss, nearest: workList(miss.nearest), wouldReach: list(miss.wouldReach) } }),
    })),
    outOfReach: list(outOfReach), replaceAll: naivePlan(replaceAll), leadOnly: naivePlan(leadOnly),
  };
}
