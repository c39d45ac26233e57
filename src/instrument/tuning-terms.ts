import { z } from 'zod';
import { daySchema } from './model.ts';

/** Coinciding partials of an octave as the trade names them: the lower note's before the upper's. */
export const octaveTypes = ['2:1', '4:2', '6:3'] as const;
export type OctaveType = (typeof octaveTypes)[number];

/** Temperaments by what they are: equal, by pure or by tempered fifths, or the year a well temperament was published. */
export const temperamentNames = ['equal', 'pythagorean', 'meantoneQuarter', 'meantoneSixth', 'well1691', 'well1779Pure', 'well1779Sixths', 'well1800'] as const;
export type TemperamentName = (typeof temperamentNames)[number];

/** Notes of the octave by their number above C. */
export const pitchClasses = ['C', 'C♯', 'D', 'D♯', 'E', 'F', 'F♯', 'G', 'G♯', 'A', 'A♯', 'B'] as const;
export type PitchClass = (typeof pitchClasses)[number];

/** What a pass over the strings took in: the whole instrument, or one stretch of it. */
export const tuningStretches = ['whole', 'bass', 'tenor', 'treble', 'highTreble'] as const;
export type TuningStretch = (typeof tuningStretches)[number];

const key = z.number().int().min(1).max(128);
const above = (most: number) => z.number().gt(0).max(most).nullable().default(null);

/** Which octave is listened to where; keys are those of the lower note. */
const octaveRuleSchema = z.strictObject({ fromKey: key, toKey: key, type: z.enum(octaveTypes) })
  .refine(({ fromKey, toKey }) => fromKey <= toKey, { path: ['toKey'], message: 'not below the key it begins at' });

/** What is stated and asked of the tuning of one stay; `null` or an empty list means not stated, and what was taken instead is told. */
export const tuningTermsSchema = z.strictObject({
  temperament: z.enum(temperamentNames).nullable().default(null),
  /** Note the circle of fifths begins on. */
  root: z.enum(pitchClasses).nullable().default(null),
  octaves: z.array(octaveRuleSchema).max(12).default([]),
  /** Weight of an even course against beatless octaves. */
  smoothness: above(1e9),
  /** How far a note may lie off the curve, and the strings of a note from each other. */
  curveToleranceCt: above(100),
  unisonToleranceCt: above(100),
  /** The day the strings were put on, and the drift that asks for the next visit. */
  strungOn: daySchema.nullable().default(null),
  driftToleranceCt: above(100),
  remark: z.string().max(4000).default(''),
});
export type TuningTerms = z.output<typeof tuningTermsSchema>;
export type TuningTermsDraft = z.input<typeof tuningTermsSchema>;

const offset = z.number().min(-1300).max(1300);

/** One pass over the strings: mean pitch as found and as left, in cents off the pitch wanted; `null` means not stated, and a pass without a pitch left was only measured. */
export const tuningPassDraftSchema = z.strictObject({
  cycle: z.number().int().min(1),
  day: daySchema,
  /** By the clock in the room, `14:30`. */
  time: z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/u, 'a time as HH:MM, such as 14:30').nullable().default(null),
  stretch: z.enum(tuningStretches),
  foundCt: offset,
  leftCt: offset.nullable().default(null),
  temperatureC: z.number().min(-20).max(60).nullable().default(null),
  humidityPct: z.number().min(0).max(100).nullable().default(null),
  remark: z.string().max(2000).default(''),
});
export type TuningPassDraft = z.input<typeof tuningPassDraftSchema>;

/** A pass as it is kept. */
export const tuningPassSchema = z.strictObject({ ...tuningPassDraftSchema.shape, id: z.string(), at: z.string() });
export type TuningPass = z.output<typeof tuningPassSchema>;
