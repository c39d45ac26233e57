import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { z } from 'zod';
import { MOST_STRIKES, fields, refusalShape } from '../schemas.ts';
import { softToLoudOf } from '../soft-to-loud.ts';

/** Brightness against level, key by key. */
export const softToLoudOperation = defineOperation({
  name: 'soft-to-loud',
  input: z.strictObject({
    strikes: z.array(z.strictObject({ key: fields.key, levelDb: fields.levelDb, brightness: fields.brightness })).min(1).max(MOST_STRIKES).describe('Strikes from soft to loud, several a key; microphone and gain left alone'),
    atLevelDb: field.number({ min: -300, max: 300, describe: 'Level to read the brightness at; the middle of what all keys hold unless said' }).optional(),
  }),
  output: z.strictObject({
    atLevelDb: field.number().optional(),
    overlapDb: z.array(field.number()).describe('Softest and loudest level that every key holds').optional(),
    medianSlopePer10Db: field.number({ describe: 'Of all keys that have one' }).optional(),
    repeatability: field.number({ describe: 'Standard deviation of the brightness of a strike about the line of its key, all lines together' }).optional(),
    degreesOfFreedom: field.count({ describe: 'Of the repeatability' }).optional(),
    keys: z.array(z.strictObject({
      key: field.count(),
      strikes: field.count(),
      softestDb: field.number({ describe: 'Softest strike that sounded' }),
      loudestDb: field.number(),
      slopePer10Db: field.number({ describe: 'Change of brightness for 10 dB' }).optional(),
      slopeUncertaintyPer10Db: field.number({ describe: 'Standard error' }).optional(),
      brightness: field.number({ describe: 'At that level' }).optional(),
      brightnessUncertainty: field.number({ describe: 'Standard error' }).optional(),
      refusals: z.array(refusalShape),
    })),
  }),
  formula: ['brightness = a + b·(L − L̄), least squares', 'slope per 10 dB = 10·b, se = 10·s/√Σ(L − L̄)²', 'se at L: s·√(1/m + (L − L̄)²/Σ(L − L̄)²)', 'repeatability: s² = Σ(m − 2)·s_line²/Σ(m − 2), from 3 degrees of freedom on', 'no slope under 3 strikes or 6 dB; nothing outside the levels played'],
  sources: ['OWN'],
  example: { strikes: [[40, -42, 2.2], [40, -34, 2.6], [40, -27, 3.1], [40, -20, 3.4], [41, -40, 2.1], [41, -33, 2.5], [41, -26, 2.8], [41, -19, 3.3]].map(([key, levelDb, brightness]) => ({ key, levelDb, brightness })) },
  run: ({ strikes, atLevelDb }) => {
    const { keys, overlapDb, ...rest } = softToLoudOf(strikes, atLevelDb);
    return ok({ ...rest, ...(overlapDb === undefined ? {} : { overlapDb: [...overlapDb] }), keys: keys.map(({ refusals, ...key }) => ({ ...key, refusals: [...refusals] })) });
  },
});
