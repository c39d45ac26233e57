import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { z } from 'zod';
import { keyLevelEffectOf } from '../key-top.ts';

const length = (describe: string) => field.millimetres({ min: 1, max: 10_000, describe });

/** What punchings taken out at the balance do to level and dip. */
export const keyLevelOperation = defineOperation({
  name: 'key-level',
  input: z.strictObject({
    balancePunchingMm: field.millimetres({ min: -50, max: 50, describe: 'Thickness taken out under the balance point; below 0 put in' }),
    keyEdgeMm: length('Balance point to the front edge'),
    backRestMm: length('Balance point back to where the key rests'),
    frontPinMm: length('Balance point to the front pin'),
  }),
  output: z.strictObject({
    levelChangeMm: field.millimetres({ describe: 'Of the front edge; below 0 it falls' }),
    dipChangeMm: field.millimetres({ describe: 'Of the front edge, as long as the front punching stays' }),
    frontPunchingMm: field.millimetres({ describe: 'Thickness to put in at the front pin for the dip as before; below 0 to take out' }),
  }),
  formula: ['Δlevel = −p·(1 + a_edge/c)', 'front punching: −p·(1 + f/c)', 'Δdip = −p·(1 + f/c)·a_edge/f'],
  sources: ['OWN'],
  example: { balancePunchingMm: 0.3, keyEdgeMm: 238, backRestMm: 170, frontPinMm: 215 },
  run: (levelling) => ok(keyLevelEffectOf(levelling)),
});
