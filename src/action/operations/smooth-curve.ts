import { defineOperation, field } from '#operation';
import { map } from '#result';
import { z } from 'zod';
import { smoothCurve } from '../smoothing.ts';

const MAX = 1e9;

/** A smooth curve through a row of values, gaps bridged. */
export const smoothCurveOperation = defineOperation({
  name: 'smooth-curve',
  input: z.strictObject({
    values: z.array(field.number({ min: -MAX, max: MAX }).nullable()).min(1).max(100_000)
      .describe('One value per key, bass to treble. null: none there, the same as a weight of 0'),
    weights: z.array(field.number({ min: 0, max: 1e6 })).min(1).max(100_000).describe('One weight per value, 0 to leave it out; all 1 when left out').optional(),
    lambda: field.number({ min: 0, max: 1e8, describe: 'Strength: 1e2 follows sections, 1e4 is nearly one quadratic' }),
  }),
  output: z.strictObject({ smoothed: z.array(field.number()) }),
  formula: ['(W + λ·DᵀD)·z = W·y', 'D: third differences'],
  sources: ['EILERS-WHITTAKER'],
  example: { values: [11.2, 11, 10.9, 10.4, null, 10.3, 10.1, 9.6], lambda: 100 },
  run: (question) => map(smoothCurve(question), (smoothed) => ({ smoothed: [...smoothed] })),
});
