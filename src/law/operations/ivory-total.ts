import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { z } from 'zod';
import { massTogether } from '../ivory-mass.ts';

/** All ivory of an instrument together. */
export const ivoryTotalOperation = defineOperation({
  name: 'ivory-total',
  input: z.strictObject({
    masses: z.array(z.strictObject({
      massG: field.grams({ min: 0, max: 1_000_000, describe: 'Mass of one material' }),
      massUncertaintyG: field.grams({ min: 0, max: 1_000_000, describe: 'Standard uncertainty; left out where none is stated' }).optional(),
    })).min(1).max(200).describe('Each material of ivory'),
  }),
  output: z.strictObject({
    massG: field.grams({ describe: 'All together' }),
    massUncertaintyG: field.grams({ describe: 'Standard uncertainty (k = 1); left out where one of them has none' }).optional(),
  }),
  formula: ['m = Σ m_i', 'u = Σ u_i, as if each erred the same way: densities and gauges are shared'],
  sources: ['JCGM-100'],
  example: { masses: [{ massG: 160, massUncertaintyG: 9 }, { massG: 25, massUncertaintyG: 2 }] },
  run: ({ masses }) => ok(massTogether(masses)),
});
