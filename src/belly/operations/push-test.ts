import { defineOperation, field } from '#operation';
import { z } from 'zod';
import { pushTestOf } from '../push-test.ts';
import { pushShape } from '../schemas.ts';

/** Stiffness of a board from pushes at one place. */
export const pushTestOperation = defineOperation({
  name: 'push-test',
  input: z.strictObject({ readings: z.array(z.strictObject(pushShape)).min(1).max(1000).describe('Loads and deflections at one place') }),
  output: z.strictObject({
    stiffnessNPerMm: field.newtonsPerMillimetre(),
    stiffnessUncertaintyNPerMm: field.newtonsPerMillimetre({ describe: 'Standard uncertainty (k = 1); needs two readings' }).optional(),
    residualMm: field.millimetres({ describe: 'Standard deviation of the deflections about the line' }).optional(),
  }),
  formula: ['c = ΣF·δ/ΣF²', 'k = 1/c', 's² = Σ(δ − c·F)²/(m − 1)', 'u(k) = k²·s/√ΣF²'],
  sources: ['JCGM-100', 'OWN'],
  example: { readings: [{ forceN: 49, deflectionMm: 0.11 }, { forceN: 98.1, deflectionMm: 0.2 }, { forceN: 147.1, deflectionMm: 0.31 }] },
  run: ({ readings }) => pushTestOf(readings),
});
