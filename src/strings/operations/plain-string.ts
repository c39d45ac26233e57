import { defineOperation, field } from '#operation';
import { ok, refuse } from '#result';
import { z } from 'zod';
import { partialsOf, plainFiguresOf } from '../plain-string.ts';
import { fields } from '../schemas.ts';
import { tooStiff } from '../wound-string.ts';

/** Tension, stress, inharmonicity and partials of a plain string. */
export const plainStringOperation = defineOperation({
  name: 'plain-string',
  input: z.strictObject({
    frequencyHz: fields.frequencyHz,
    speakingLengthMm: fields.speakingLengthMm,
    diameterMm: fields.diameterMm,
    youngsModulusGPa: fields.youngsModulusGPa,
    densityKgM3: fields.densityKgM3,
    strengthModel: fields.strengthModel,
    certificateMPa: fields.certificateMPa,
  }),
  output: z.strictObject({
    linearDensityGPerM: field.gramsPerMetre(),
    tensionN: field.newtons({ describe: 'As of a flexible string' }),
    stressMPa: field.megapascals({ describe: 'The same for every gauge' }),
    breakingPct: field.percent(),
    inharmonicityB: field.ratio({ describe: 'With the flexible tension' }),
    impedanceKgPerS: field.kilogramsPerSecond(),
    exactTensionN: field.newtons({ describe: 'Ends pinned, partial 1 at the frequency given' }),
    exactInharmonicityB: field.ratio({ describe: 'With the exact tension' }),
    partialsHz: z.array(field.hertz()),
    strain: field.ratio(),
  }),
  formula: ['μ = ρ·π·d²/4', 'T = 4·μ·L²·f²', 'σ = T/A = ρ·(2·L·f)²', 'B = π³·E·d⁴/(64·T·L²)', 'T′ = T − π²·E·I/L²', 'fₙ = n·f₁·√((1 + B′·n²)/(1 + B′))', 'Z = √(T·μ)'],
  sources: ['MERSENNE-1636', 'FLETCHER-1964', 'ASTM-A228'],
  example: { frequencyHz: 261.6256, speakingLengthMm: 622, diameterMm: 1.016 },
  run: (input) => {
    const figures = plainFiguresOf(input);
    if (figures.exactTensionN <= 0) return refuse(tooStiff(input.frequencyHz));
    return ok({ ...figures, partialsHz: [...partialsOf({ frequencyHz: input.frequencyHz, inharmonicityB: figures.exactInharmonicityB })] });
  },
});
