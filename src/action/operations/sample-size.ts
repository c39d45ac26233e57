import { defineOperation, field } from '#operation';
import { type Result, ok, refuse } from '#result';
import { type Ratio, ratio } from '#units';
import { z } from 'zod';
import { boundOfBad, sampleSizeForMean, sampleSizeToDetect } from '../sample-size.ts';

const MAX_KEYS = 100_000;

const keys = field.count({ min: 1, max: MAX_KEYS, describe: 'How many keys there are' });
const confidence = field.ratio({ above: 0, max: 1, describe: 'Confidence, 0.95 for 95 %' });
const amount = { min: 1e-6, max: 1e9 };

/** How many keys to weigh, or what a clean sample leaves open. */
export const sampleSizeOperation = defineOperation({
  name: 'sample-size',
  input: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('mean'), sd: field.number({ ...amount, min: 0, describe: 'Standard deviation expected' }), halfWidth: field.number({ ...amount, describe: 'How close the mean should come, same unit' }), keys }),
    z.strictObject({ kind: z.literal('detect'), bad: field.count({ min: 1, max: MAX_KEYS, describe: 'How many bad keys there are, at least one of which is to be found' }), confidence, keys }),
    z.strictObject({ kind: z.literal('bound'), sampled: field.count({ min: 0, max: MAX_KEYS, describe: 'How many keys were weighed, none of them bad' }), confidence, keys }),
  ]),
  output: z.strictObject({
    sampleSize: field.count(),
    missProbability: field.ratio({ describe: 'How likely the sample shows none of the bad keys' }).optional(),
    maxBad: field.count({ describe: 'Most bad keys that the clean sample does not rule out' }).optional(),
  }),
  formula: [
    'mean: n₀ = (1.96·s/d)², n = n₀/(1 + (n₀ − 1)/N), rounded up',
    'detect: least n with C(N − b, n)/C(N, n) ≤ 1 − confidence',
    'bound: most b with C(N − b, n)/C(N, n) > 1 − confidence',
  ],
  sources: ['OWN', 'JCGM-100'],
  example: { kind: 'detect', bad: 3, confidence: 0.95, keys: 88 },
  run: (question): Result<{ sampleSize: number; missProbability?: Ratio; maxBad?: number }> => {
    if (question.kind === 'mean') return ok({ sampleSize: sampleSizeForMean(question) });
    const [path, count] = question.kind === 'detect' ? ['bad', question.bad] : ['sampled', question.sampled];
    if (count > question.keys) return refuse({ code: 'range', path, given: count, allowed: `at most the ${String(question.keys)} keys`, params: { reason: 'moreThanKeys', max: question.keys } });
    const found = question.kind === 'detect' ? sampleSizeToDetect(question) : boundOfBad(question);
    return ok({ ...found, missProbability: ratio(found.missProbability) });
  },
});
