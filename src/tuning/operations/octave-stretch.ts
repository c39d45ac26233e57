import { defineOperation, field } from '#operation';
import { ok, refuse } from '#result';
import { z } from 'zod';
import { stretchOf } from '../octave-stretch.ts';
import { byOctaveType, fields } from '../schemas.ts';
import type { StiffNote } from '../stiff-note.ts';

/** The farthest octave whose stretch is listed: 10:5. */
const MOST_UPPER_PARTIAL = 5;
const byB = { lowerB: fields.inharmonicityB, upperB: fields.inharmonicityB };
const byPartials = { lowerPartialsHz: fields.partialsHz(6), upperPartialsHz: fields.partialsHz(3) };

/** How far an octave is stretched where its coinciding partials do not beat. */
export const octaveStretchOperation = defineOperation({
  name: 'octave-stretch',
  input: z.union([
    z.strictObject(byB), z.strictObject(byPartials),
    z.strictObject({ lowerPartialsHz: byPartials.lowerPartialsHz, upperB: byB.upperB }), z.strictObject({ lowerB: byB.lowerB, upperPartialsHz: byPartials.upperPartialsHz }),
  ]),
  output: z.strictObject({
    offsetCents: byOctaveType(field.cents()).describe('Over 2:1 of the first partials'),
    partialOffsetsCents: z.array(field.cents()).describe('The same for 2:1, 4:2, 6:3, 8:4 and 10:5, as far as partials are known'),
  }),
  formula: ['fₙ = n·f₁·√((1 + B·n²)/(1 + B))', 'cents over 2:1 = 1200·log₂[(f₂ₖ/f₁ of the lower)/(2·fₖ/f₁ of the upper)]', '= 600·log₂[(1 + 4k²·B_l)(1 + B_u)/((1 + B_l)(1 + k²·B_u))]'],
  sources: ['FLETCHER-1964', 'OWN'],
  example: { lowerB: 0.00039, upperB: 0.0015 },
  run: (input) => {
    const lower: StiffNote = 'lowerB' in input ? { inharmonicityB: input.lowerB } : { partialsHz: input.lowerPartialsHz };
    const upper: StiffNote = 'upperB' in input ? { inharmonicityB: input.upperB } : { partialsHz: input.upperPartialsHz };
    const stretches = Array.from({ length: MOST_UPPER_PARTIAL }, (_, index) => stretchOf(lower, upper, index + 1)).filter((stretch) => stretch !== undefined);
    const [first, second, third] = stretches;
    if (first === undefined || second === undefined || third === undefined) return refuse({ code: 'length', path: 'upperPartialsHz', given: input, allowed: 'partials as far as 6:3 asks for' });
    return ok({ offsetCents: { '2:1': first, '4:2': second, '6:3': third }, partialOffsetsCents: stretches });
  },
});
