import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { grams, percent } from '#units';
import { z } from 'zod';
import { shiftedHammerOf } from '../plan/shifts.ts';
import { fields } from '../schemas.ts';

/** What a hammer weighs once it is made heavier or lighter, in grams first, then in per cent. */
export const hammerChangeOperation = defineOperation({
  name: 'hammer-change',
  input: z.strictObject({
    hammerWeightG: fields.hammerWeightG,
    hammerChangeG: field.grams({ min: -60, max: 60, describe: 'Heavier by; below 0 lighter' }).default(grams(0)),
    hammerChangePct: field.percent({ min: -99, max: 1000, describe: 'Then heavier by per cent; below 0 lighter' }).default(percent(0)),
  }),
  output: z.strictObject({ hammerWeightG: field.grams() }),
  formula: ['SW′ = (SW + g)·(1 + p/100)'],
  sources: ['OWN'],
  example: { hammerWeightG: 9, hammerChangeG: -0.5, hammerChangePct: 0 },
  run: ({ hammerWeightG, hammerChangeG: hammerG, hammerChangePct: hammerPct }) => ok({ hammerWeightG: shiftedHammerOf(hammerWeightG, { hammerG, hammerPct }) }),
});
