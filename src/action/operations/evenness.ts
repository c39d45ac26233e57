import { defineOperation, field } from '#operation';
import { type Issue, ok, refuse } from '#result';
import { z } from 'zod';
import { evennessOf } from '../evenness.ts';

const MAX = 1e9;

const inputSchema = z.strictObject({
  values: z.array(field.number({ min: -MAX, max: MAX }).nullable()).min(1).max(100_000)
    .describe('One value per key, bass to treble, all of one unit. null: no number there (sticks, does not return, not weighed); counts as not inside'),
  target: field.number({ min: -MAX, max: MAX, describe: 'What every value should be; goes with tolerance' }).optional(),
  tolerance: field.number({ min: 0, max: MAX, describe: 'By how much a value may miss the target, both ways, ends included; goes with target' }).optional(),
  step: field.number({ min: 1e-6, max: MAX, describe: 'Smallest difference the weights or the scale can tell' }),
  uncertainty: field.number({ min: 0, max: MAX, describe: 'Expanded uncertainty (k = 2) of one value, for guarded acceptance; goes with target and tolerance' }).optional(),
  keys: field.count({ min: 1, max: 100_000, describe: 'How many keys the keyboard has; the row must then be as long' }).optional(),
});

/** How even a row is from key to key. */
export const evennessOperation = defineOperation({
  name: 'evenness',
  input: inputSchema,
  output: z.strictObject({
    count: field.count({ describe: 'Values in the row, nulls included' }),
    measured: field.count({ describe: 'Values that are numbers' }),
    median: field.number(),
    inside: field.count().optional(),
    insideGuarded: field.count().optional(),
    largestStep: field.number().optional(),
    largestStepIndex: field.count({ describe: 'Place in the row, from 0, of the lower of the two neighbours' }).optional(),
    medianStep: field.number().optional(),
    outliers: z.array(field.count()).describe('Places in the row, from 0'),
    capability: field.number({ describe: 'Ppk-style figure of what lies inside the fence; only to be shown beside the count' }).optional(),
  }),
  formula: [
    'inside: |x − T| ≤ t',
    'guarded: |x − T| ≤ t − U',
    'outlier: |x − median| > 3.5·max(MADN, q)',
    'capability: (t − |m − T|)/(3·max(s, q/√12)), m and s of what is inside the fence',
  ],
  sources: ['JCGM-106', 'OWN', 'PRACTICE'],
  example: { values: [49, 48, 50, 49, 47, 49, 57, 49, 50, 48], target: 49, tolerance: 2, step: 1, uncertainty: 1.5 },
  run: (question) => {
    const issues = contradictionsOf(question);
    if (issues.length > 0) return refuse(...issues);
    const { values, target, tolerance, step, uncertainty } = question;
    const band = target === undefined || tolerance === undefined ? {} : { band: { target, tolerance } };
    const found = evennessOf({ values, step, ...band, ...(uncertainty === undefined ? {} : { uncertainty }) });
    return ok({ count: values.length, measured: values.filter((value) => value !== null).length, ...found, outliers: [...found.outliers] });
  },
});

/** What the schema cannot say: fields that go together, a row without a number, a row of another compass. */
function contradictionsOf({ values, target, tolerance, uncertainty, keys }: z.output<typeof inputSchema>): readonly Issue[] {
  const issues: Issue[] = [];
  const lacking = (path: string, because: string): void => void issues.push({ code: 'required', path, given: undefined, allowed: `a finite number, since ${because} is given`, params: { kind: 'number' } });
  if (target === undefined && tolerance !== undefined) lacking('target', 'a tolerance');
  if (tolerance === undefined && target !== undefined) lacking('tolerance', 'a target');
  if (uncertainty !== undefined && target === undefined && tolerance === undefined) lacking('target', 'an uncertainty');
  if (values.every((value) => value === null)) issues.push({ code: 'length', path: 'values', given: values, allowed: 'at least 1 number', params: { reason: 'noNumber' } });
  if (keys !== undefined && keys !== values.length) issues.push({ code: 'length', path: 'values', given: values.length, allowed: `${String(keys)} entries, one per key; null where there is no number`, params: { reason: 'keysCount', keys } });
  return issues;
}
