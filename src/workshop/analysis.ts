import { type Instrument, type KeptRecording, type Recording, compassOf } from '#instrument';
import { TONE_METHOD } from '#tone';
import { z } from 'zod';

/** What can be worked out of a recording: one note, or every note of a longer take. */
export const analysisMethods = ['tone-note', 'tone-run'] as const;
export type AnalysisMethod = (typeof analysisMethods)[number];

/** Version of each method, with that of the listening beneath: raised when the same sound would give another answer, so that no two are taken for one. */
export const analysisVersions: Readonly<Record<AnalysisMethod, string>> = { 'tone-note': `${String(TONE_METHOD)}.2`, 'tone-run': `${String(TONE_METHOD)}.2` };

/** What a method is told beside the sound: the key where one is known, the keyboard, and the pitch of A4. */
export const analysisInputSchema = z.strictObject({
  key: z.number().int().min(1).nullable(),
  firstMidi: z.number().int(),
  lastMidi: z.number().int(),
  a4Hz: z.number(),
  /** One note again and again, from soft to loud. */
  isLadder: z.boolean(),
});
export type AnalysisInput = z.output<typeof analysisInputSchema>;

/** One piece of work on a sound: by these four it is known whether it was done already. */
export const analysisTaskSchema = z.strictObject({ hash: z.string(), method: z.enum(analysisMethods), version: z.string(), input: analysisInputSchema });
export type AnalysisTask = z.output<typeof analysisTaskSchema>;

/** A result worked out of a sound. It is derived: it can be thrown away and worked out again. */
export const analysisSchema = z.strictObject({ ...analysisTaskSchema.shape, answer: z.unknown(), madeAt: z.string() });
export type Analysis = z.output<typeof analysisSchema>;

/** How a job may stand. */
export const jobStatuses = ['waiting', 'running', 'done', 'failed', 'cancelled'] as const;

/** Why a job came to nothing: the sound could not be read, the thread ended, or it took longer than a job may. */
export const jobFailureSchema = z.strictObject({
  reason: z.enum(['unreadable', 'crashed', 'tooLong']),
  /** What is wrong with the file, place by place, where that is known. */
  issues: z.array(z.strictObject({ code: z.string(), path: z.string(), given: z.unknown(), allowed: z.string(), params: z.record(z.string(), z.union([z.string(), z.number()])).optional() })),
});
export type JobFailure = z.output<typeof jobFailureSchema>;

/** Work in the background, as it stands. */
export const jobSchema = z.strictObject({
  id: z.string(),
  recordingId: z.string(),
  task: analysisTaskSchema,
  status: z.enum(jobStatuses),
  /** How often it was begun. */
  attempts: z.number().int(),
  /** 0 to 1. */
  progress: z.number(),
  failure: jobFailureSchema.nullable(),
  askedAt: z.string(),
});
export type Job = z.output<typeof jobSchema>;

/** The sound a recording is heard by: the copy without loss where one was made, or else the file itself. */
export function soundOf({ file, copy }: Pick<Recording, 'file' | 'copy'>): KeptRecording {
  return copy ?? file;
}

/** What is to be worked out of a recording. */
export function analysisTaskOf(recording: Pick<Recording, 'file' | 'copy' | 'contents' | 'key'>, instrument: Instrument): AnalysisTask {
  const method = recording.contents === 'note' ? 'tone-note' : 'tone-run';
  const { firstMidi, lastMidi } = compassOf(instrument);
  return {
    hash: soundOf(recording).hash,
    method,
    version: analysisVersions[method],
    input: { key: recording.key, firstMidi, lastMidi, a4Hz: instrument.a4Hz, isLadder: recording.contents === 'ladder' },
  };
}
