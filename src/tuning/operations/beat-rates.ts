import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { hertz } from '#units';
import { z } from 'zod';
import { beatOf } from '../beat-rates.ts';
import { byOctaveType, fields } from '../schemas.ts';

/** How fast an octave beats at each of its coinciding partials. */
export const beatRatesOperation = defineOperation({
  name: 'beat-rates',
  input: z.strictObject({ lowerHz: fields.frequencyHz, upperHz: fields.frequencyHz, lowerB: fields.inharmonicityB, upperB: fields.inharmonicityB }),
  output: z.strictObject({
    beatsPerSecond: byOctaveType(field.number()).describe('As heard, without a sign'),
    excessHz: byOctaveType(field.hertz()).describe('Above nought where the octave is wide'),
  }),
  formula: ['excess = fₖ(upper) − f₂ₖ(lower)', 'beats a second = |excess|', 'fₙ = n·f₁·√((1 + B·n²)/(1 + B))'],
  sources: ['FLETCHER-1964'],
  example: { lowerHz: 220, upperHz: 440.5, lowerB: 0.00025, upperB: 0.00065 },
  run: ({ lowerHz, upperHz, lowerB, upperB }) => {
    const beat = (k: number) => beatOf({ frequencyHz: lowerHz, string: { inharmonicityB: lowerB } }, { frequencyHz: upperHz, string: { inharmonicityB: upperB } }, k) ?? hertz(0);
    const excessHz = { '2:1': beat(1), '4:2': beat(2), '6:3': beat(3) };
    return ok({ beatsPerSecond: { '2:1': Math.abs(excessHz['2:1']), '4:2': Math.abs(excessHz['4:2']), '6:3': Math.abs(excessHz['6:3']) }, excessHz });
  },
});
