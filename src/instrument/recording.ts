import { z } from 'zod';
import { states } from './state.ts';

/** What a recording holds: one note, the notes up the compass one by one, one note from soft to loud, or something else. */
export const recordedContents = ['note', 'walk', 'ladder', 'other'] as const;
/** Kinds of sound file that are kept. */
export const recordingFormats = ['wav', 'flac', 'ogg', 'mp3', 'm4a'] as const;
export type RecordingFormat = (typeof recordingFormats)[number];

const hashSchema = z.string().regex(/^[0-9a-f]{64}$/u, 'the SHA-256 of a kept recording');

/** A sound file by the SHA-256 of its bytes. */
export const keptRecordingSchema = z.strictObject({ hash: hashSchema, byteCount: z.number().int().min(1), format: z.enum(recordingFormats) });
export type KeptRecording = z.output<typeof keptRecordingSchema>;

/**
 * A recording as it is told of: whose stay and state, what was played, where the microphone stood and which it was.
 * `key` is the key told, never the one heard. Null and empty mean not stated.
 */
export const recordingDraftSchema = z.strictObject({
  cycle: z.number().int().min(1),
  state: z.enum(states),
  contents: z.enum(recordedContents),
  /** The file as it came; its bytes are kept whole. */
  file: keptRecordingSchema,
  /** The same sound without loss, made where the file itself cannot be read on every machine. */
  copy: keptRecordingSchema.nullable().default(null),
  fileName: z.string().max(255).default(''),
  key: z.number().int().min(1).nullable().default(null),
  place: z.string().trim().max(200).default(''),
  device: z.string().trim().max(200).default(''),
  remark: z.string().max(4000).default(''),
  takenAt: z.iso.datetime().nullable().default(null),
});
export type RecordingDraft = z.input<typeof recordingDraftSchema>;

/** A recording as it is kept: `by` is a reference to who kept it, `at` when. */
export const recordingSchema = z.strictObject({ ...recordingDraftSchema.shape, id: z.string(), at: z.string(), by: z.string() });
export type Recording = z.output<typeof recordingSchema>;
