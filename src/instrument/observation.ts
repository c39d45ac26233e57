import { z } from 'zod';
import { states } from './state.ts';

/** Parts of the belly looked at by eye. */
export const bellyParts = ['soundboard', 'rib', 'bridge', 'bridgePins', 'plate', 'pinblock', 'tuningPins'] as const;
/** Parts looked at by eye, in the order of a walk around the instrument. */
export const observedParts = ['case', 'finish', ...bellyParts, 'strings', 'dampers', 'actionParts', 'hammers', 'keys', 'keyTops', 'pedals', 'castors', 'bench'] as const;
export type ObservedPart = (typeof observedParts)[number];
/** What can be seen of a part. */
export const observedFaults = ['crack', 'split', 'separated', 'sunken', 'loose', 'worn', 'rust', 'repaired', 'missing', 'broken', 'eaten', 'swollen', 'stained', 'sound', 'other'] as const;
/** How much a fault weighs; `stop`: nothing goes on before somebody who knows has looked at it. */
export const severities = ['slight', 'moderate', 'serious', 'stop'] as const;

/** Kinds of photo that are kept. */
export const photoTypes = ['image/jpeg', 'image/png', 'image/webp'] as const;
/** Most bytes of one photo. */
export const PHOTO_LIMIT_BYTES = 15 * 1024 * 1024;
/** Most photos of one observation. */
export const MOST_PHOTOS = 24;

/** A photo by the SHA-256 of its bytes, with the name its file had. */
export const photoSchema = z.strictObject({ hash: z.string().regex(/^[0-9a-f]{64}$/u, 'the SHA-256 of a kept photo'), name: z.string().max(255) });
export type Photo = z.output<typeof photoSchema>;

/** Something seen that no gauge measures; keys say where along the bridge it lies, `null` means not stated. */
export const observationDraftSchema = z.strictObject({
  cycle: z.number().int().min(1),
  state: z.enum(states),
  part: z.enum(observedParts),
  fault: z.enum(observedFaults),
  fromKey: z.number().int().min(1).nullable().default(null),
  toKey: z.number().int().min(1).nullable().default(null),
  /** Null: not judged. */
  severity: z.enum(severities).nullable().default(null),
  lengthMm: z.number().gt(0).max(5000).nullable().default(null),
  remark: z.string().max(4000).default(''),
  photos: z.array(photoSchema).max(MOST_PHOTOS).default([]),
});
export type ObservationDraft = z.input<typeof observationDraftSchema>;

/** An observation as it is kept. */
export const observationSchema = z.strictObject({ ...observationDraftSchema.shape, id: z.string(), at: z.string() });
export type Observation = z.output<typeof observationSchema>;
