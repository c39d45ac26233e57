import { defineOperation } from '#operation';
import { map } from '#result';
import { z } from 'zod';
import { bearingOf, negativeSidesOf } from '../bearing.ts';
import { bearingUncertaintyOf, checkDoubt } from '../bearing-uncertainty.ts';
import { bearingShape, doubtShape, negativeField, noteShape, uncertaintyShape } from '../schemas.ts';

/** Angles and down bearing of one note. */
export const bearingOperation = defineOperation({
  name: 'bearing',
  input: z.strictObject({ ...noteShape, ...doubtShape }),
  output: z.strictObject({ ...bearingShape, negative: negativeField, ...uncertaintyShape }),
  formula: ['a = atan((h_b − h_f)/L)', 'b = atan((h_b − h_r)/L_r)', 'F = n·T·(sin a + sin b)', 'dF/dh_b = n·T·(cos³a/L + cos³b/L_r)', 'u(y)² = Σ (∂y/∂x·u(x))²'],
  sources: ['VARIGNON-1687', 'JCGM-100'],
  example: { tensionN: 680, strings: 3, speakingLengthMm: 622, backLengthMm: 95, frontHeightMm: 0, bridgeHeightMm: 1.5, rearHeightMm: 0.1, heightUncertaintyMm: 0.1, backLengthUncertaintyMm: 0.5 },
  run: (input) => map(checkDoubt(input, input), (note) => {
    const bearing = bearingOf(note);
    return { ...bearing, negative: [...negativeSidesOf(bearing)], ...bearingUncertaintyOf(note, note) };
  }),
});
