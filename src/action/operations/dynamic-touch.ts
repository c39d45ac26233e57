import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { z } from 'zod';
import { returnTimeOf, strokeForceOf } from '../dynamic-touch.ts';

/** Lightest that counts as a weight: keeps quotients finite. */
const LEAST_G = 0.001;

/** Force of a stroke, and the time the key takes to come back. */
export const dynamicTouchOperation = defineOperation({
  name: 'dynamic-touch',
  input: z.strictObject({
    balanceWeightG: field.grams({ min: 0, max: 10_000, describe: 'Balance weight, (down + up)/2' }),
    frictionG: field.grams({ min: 0, max: 10_000, describe: 'Friction at the key front, (down − up)/2' }),
    effectiveMassG: field.grams({ min: LEAST_G, max: 100_000, describe: 'Mass at the measuring point that stands for all moving parts' }),
    dipMm: field.millimetres({ min: 0.01, max: 100, describe: 'Travel of the measuring point' }),
    strokeMs: field.milliseconds({ min: 0.1, max: 100_000, describe: 'From rest to the bottom, evenly accelerated' }),
  }),
  output: z.strictObject({
    forceN: field.newtons({ describe: 'At the measuring point' }),
    inertialShare: field.ratio({ describe: 'Part of the force that sets the parts moving' }),
    returnMs: field.milliseconds({ describe: 'Let go at the bottom, back by the up weight alone; null when the key stays down' }).nullable(),
  }),
  formula: ['F = (BW + F)·g + m_eff·2·s/t²', 't_return = √(2·s·m_eff/(UW·g)), UW = BW − F'],
  sources: ['OWN', 'CGPM-1901'],
  example: { balanceWeightG: 37.5, frictionG: 11.5, effectiveMassG: 330, dipMm: 10, strokeMs: 25 },
  run: (stroke) => ok({ ...strokeForceOf(stroke), returnMs: returnTimeOf(stroke) ?? null }),
});
