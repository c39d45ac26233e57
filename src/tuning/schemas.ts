import { pitchClasses, temperamentNames } from '#instrument';
import { field } from '#operation';
import { z } from 'zod';

/** B of any string that still sounds like one. */
const B = { min: 0, max: 1 };
const HERTZ = { min: 1, max: 100_000 };

/** Fields that several operations share; each says the same everywhere. */
export const fields = {
  inharmonicityB: field.ratio({ ...B, describe: 'Inharmonicity of one string' }),
  frequencyHz: field.hertz({ ...HERTZ, describe: 'Frequency of partial 1' }),
  partialsHz: (least: number) => z.array(field.hertz(HERTZ)).min(least).max(100).describe('Partials one by one from the first, which a wound string needs'),
  key: field.count({ min: 1, max: 128, describe: 'Number of the key; A0 is 1 on 88 keys' }),
  cents: (describe: string) => field.cents({ min: -1500, max: 1500, describe }),
  temperament: z.enum(temperamentNames),
  root: z.enum(pitchClasses).describe('Note the circle of fifths begins on; C as published'),
} as const;

/** A figure for each of the octave types, in the unit of the field that holds it. */
export const byOctaveType = <T extends z.ZodType>(figure: T) => z.strictObject({ '2:1': figure, '4:2': figure, '6:3': figure });
