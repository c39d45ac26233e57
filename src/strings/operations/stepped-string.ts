import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { z } from 'zod';
import { PARTIALS } from '../plain-string.ts';
import { steppedPartialsOf } from '../stepped-string.ts';

/** Exact partials of a string made of uniform pieces. */
export const steppedStringOperation = defineOperation({
  name: 'stepped-string',
  input: z.strictObject({
    tensionN: field.newtons({ min: 0.01, max: 100_000, describe: 'Tension, the same along the string' }),
    segments: z.array(z.strictObject({
      lengthMm: field.millimetres({ min: 0.01, max: 10_000, describe: 'Length of the piece' }),
      linearDensityGPerM: field.gramsPerMetre({ min: 0.001, max: 100_000, describe: 'Mass of a metre of it' }),
      bendingStiffnessNm2: field.newtonSquareMetres({ min: 0, max: 1000, describe: 'Young’s modulus times second moment of area' }),
    })).min(1).max(100).describe('Pieces from one end to the other'),
    partials: field.count({ min: 1, max: 200, describe: 'How many partials' }).default(PARTIALS),
  }),
  output: z.strictObject({ partialsHz: z.array(field.hertz()) }),
  formula: ['E·I·y⁗ − T·y″ − μ·ω²·y = 0 in each piece', 'modes below ω: Σ clamped modes of the pieces + negative pivots of K(ω)', 'both ends pinned'],
  sources: ['WITTRICK-WILLIAMS-1971', 'OWN'],
  example: {
    tensionN: 900,
    segments: [
      { lengthMm: 20, linearDensityGPerM: 7.5, bendingStiffnessNm2: 0.0144 },
      { lengthMm: 1150, linearDensityGPerM: 55, bendingStiffnessNm2: 0.0144 },
      { lengthMm: 30, linearDensityGPerM: 7.5, bendingStiffnessNm2: 0.0144 },
    ],
    partials: 8,
  },
  run: ({ partials, ...string }) => ok({ partialsHz: [...steppedPartialsOf(string, partials)] }),
});
