import { defineOperation, field } from '#operation';
import { map } from '#result';
import { z } from 'zod';
import { USUAL_LAMBDA } from '../along-keys.ts';
import { MOST_NOTES, fields, offsetShape } from '../schemas.ts';
import { voices, voicingMapOf } from '../voicing.ts';

/** Which hammers are bright and which dull. */
export const voicingMapOperation = defineOperation({
  name: 'voicing-map',
  input: z.strictObject({
    notes: z.array(z.strictObject({ key: fields.key, brightness: fields.brightness, uncertainty: fields.uncertainty('Standard uncertainty of the brightness') })).min(1).max(MOST_NOTES).describe('Brightness of each key at one level, as soft-to-loud answers it'),
    repeatability: field.number({ min: 0, max: 1e6, describe: 'Standard deviation of the brightness of one key struck again and again at that level' }),
    lambda: fields.lambda(USUAL_LAMBDA),
  }),
  output: z.strictObject({
    hammers: z.array(z.strictObject({ ...offsetShape, voice: z.enum(voices), beyond: field.number({ describe: 'How far off beyond what repeating explains; 0 within it' }) })),
    scatter: field.number({ describe: 'Robust standard deviation of the offsets' }),
    bright: z.array(field.count()).describe('Keys'),
    dull: z.array(field.count()).describe('Keys'),
  }),
  formula: ['curve as in tone-evenness', 'beyond = max(0, |offset| − 2·√(s² + u²))', 'bright: offset above 0 and beyond above 0; dull: below 0'],
  sources: ['EILERS-WHITTAKER', 'TUKEY-BIWEIGHT', 'JCGM-100', 'OWN'],
  example: { notes: [[40, 3.1], [41, 3.05], [42, 3.0], [43, 3.6], [44, 2.92], [45, 2.9], [46, 2.4], [47, 2.8]].map(([key, brightness]) => ({ key, brightness })), repeatability: 0.05 },
  run: ({ notes, repeatability, lambda }) => map(voicingMapOf(notes.map(({ key, brightness, uncertainty }) => ({ key, value: brightness, uncertainty })), repeatability, lambda), ({ hammers, scatter, bright, dull }) => ({
    hammers: [...hammers], scatter, bright: [...bright], dull: [...dull],
  })),
});
