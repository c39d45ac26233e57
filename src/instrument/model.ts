import { z } from 'zod';

/** A run of keys with strings of one kind, between two breaks. */
const sectionSchema = z.strictObject({ name: z.string().min(1).max(40), firstKey: z.number().int().min(1), lastKey: z.number().int().min(1) });

/** What a user may set of an instrument; `null` means not stated. */
export const instrumentDraftSchema = z.strictObject({
  name: z.string().trim().min(1).max(120),
  kind: z.enum(['grand', 'upright']),
  maker: z.string().max(120).nullable().default(null),
  serial: z.string().max(60).nullable().default(null),
  year: z.number().int().min(1700).max(2100).nullable().default(null),
  lengthMm: z.number().min(300).max(4000).nullable().default(null),
  firstMidi: z.number().int().min(0).max(127).default(21),
  lastMidi: z.number().int().min(0).max(127).default(108),
  a4Hz: z.number().min(390).max(470).default(440),
  sections: z.array(sectionSchema).max(12).default([]),
  remark: z.string().max(4000).default(''),
}).refine(({ firstMidi, lastMidi }) => lastMidi - firstMidi >= 11, { path: ['lastMidi'], message: 'at least an octave above the first key' });
export type InstrumentDraft = z.input<typeof instrumentDraftSchema>;

/** An instrument as it is kept. `cycle` counts its stays in the shop, from 1. */
export const instrumentSchema = z.strictObject({
  ...instrumentDraftSchema.shape,
  id: z.string(),
  workshopId: z.string(),
  cycle: z.number().int().min(1),
  /** Invented for demonstration: every print says so. */
  demo: z.boolean(),
});
export type Instrument = z.output<typeof instrumentSchema>;

/** A day of the calendar, `YYYY-MM-DD` (ISO 8601). */
export const daySchema = z.iso.date();

/** How the weights of one sitting were taken; `null` means not stated and prints so. */
export const sessionDraftSchema = z.strictObject({
  cycle: z.number().int().min(1),
  state: z.enum(['found', 'planned', 'finished']),
  /** The day the weights were taken, which need not be the day they were written down. */
  weighedOn: daySchema.nullable().default(null),
  /** Distance of the weight behind the front edge of the key. */
  placeOnKeyMm: z.number().min(0).max(100).nullable().default(null),
  stepG: z.number().gt(0).max(50).nullable().default(null),
  /** Accuracy class of the weights after OIML R 111, or what the shop calls them. */
  weightClass: z.string().max(40).nullable().default(null),
  /** Standard deviation of repeated weighings of one key, if the shop knows it. */
  repeatabilityG: z.number().min(0).max(50).nullable().default(null),
  /** `firstMovesLastLifts`: down is the first weight that moves the key, up the last still lifted. `interpolated`: read between steps. */
  rule: z.enum(['firstMovesLastLifts', 'interpolated']).nullable().default(null),
  dampers: z.enum(['lifted', 'resting', 'none']).nullable().default(null),
  helperSprings: z.enum(['none', 'engaged', 'unhooked']).nullable().default(null),
  regulated: z.boolean().nullable().default(null),
  repeats: z.number().int().min(1).max(10).default(1),
  temperatureC: z.number().min(-20).max(60).nullable().default(null),
  humidityPct: z.number().min(0).max(100).nullable().default(null),
  /** Weights, scale and gauges used, in the user's words. */
  equipment: z.string().max(400).nullable().default(null),
  remark: z.string().max(2000).default(''),
});
export type SessionDraft = z.input<typeof sessionDraftSchema>;

/** A weighing session as it is kept. */
export const sessionSchema = z.strictObject({ ...sessionDraftSchema.shape, id: z.string(), startedAt: z.string() });
export type WeighingSession = z.output<typeof sessionSchema>;

/** What is to be even, and how even: asked, not assumed. One per instrument and cycle. `upWeightMinG` 0 asks for no least up weight. */
export const touchIntentSchema = z.discriminatedUnion('even', [
  z.strictObject({ even: z.literal('downWeight'), targetG: z.number().min(10).max(150), toleranceG: z.number().gt(0).max(50), upWeightMinG: z.number().min(0).max(100) }),
  z.strictObject({ even: z.literal('balanceWeight'), targetG: z.number().min(5).max(150), toleranceG: z.number().gt(0).max(50), upWeightMinG: z.number().min(0).max(100) }),
  z.strictObject({
    even: z.literal('curve'),
    /** Down weight at anchor keys, straight between them, level outside them. */
    anchors: z.array(z.strictObject({ key: z.number().int().min(1).max(128), downWeightG: z.number().min(10).max(150) })).min(2).max(12),
    toleranceG: z.number().gt(0).max(50),
    upWeightMinG: z.number().min(0).max(100),
  }),
]);
export type TouchIntent = z.output<typeof touchIntentSchema>;
