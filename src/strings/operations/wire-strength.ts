import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { z } from 'zod';
import { fields } from '../schemas.ts';
import { strengthBases, strengthModels, wireStrengthOf } from '../wire-strength.ts';

/** The least strength of a wire, and the load that breaks it. */
export const wireStrengthOperation = defineOperation({
  name: 'wire-strength',
  input: z.strictObject({
    diameterMm: fields.diameterMm,
    certificateMPa: fields.certificateMPa,
    model: z.enum(strengthModels).default('astm-a228-min'),
  }),
  output: z.strictObject({
    tensileStrengthMPa: field.megapascals(),
    breakingLoadN: field.newtons(),
    basis: z.enum(strengthBases).describe('What the strength rests on; a law stands in outside a table'),
  }),
  formula: ['table: linear in diameter between rows', 'law, outside the table: S = 2211/d^0.145 (A228), S = 1980 − 740·log₁₀ d (SM)', 'F = S·π·d²/4'],
  sources: ['ASTM-A228', 'EN-10270-1', 'SHIGLEY-10-4'],
  example: { diameterMm: 1, model: 'astm-a228-min' },
  run: ({ diameterMm, certificateMPa, model }) => ok(wireStrengthOf({ diameterMm, certificateMPa, strengthModel: model })),
});
