import type { Recording, State } from '#instrument';
import { z } from 'zod';
import type { Analysis } from './analysis.ts';

const figure = z.number().nullish().transform((value) => value ?? undefined);

/** What is read of the answer of `tone-note`; fields this program does not know stay where they are. */
const noteSchema = z.looseObject({
  key: figure,
  f0Hz: figure,
  f0UncertaintyHz: figure,
  offsetCents: figure,
  inharmonicityB: figure,
  inharmonicityUncertainty: figure,
  onsetS: figure,
  startS: figure,
  endS: figure,
  loudnessDb: figure,
  partials: z.array(z.looseObject({ n: z.number(), frequencyHz: z.number(), levelDb: figure })).catch([]),
  quality: z.looseObject({ snrDb: figure, clipped: z.boolean().catch(false), warnings: z.array(z.string()).catch([]) }).optional().catch(undefined),
});
const runSchema = z.looseObject({ notes: z.array(noteSchema), missingKeys: z.array(z.number()).catch([]), duplicateKeys: z.array(z.number()).catch([]) });

/** A note heard in a recording. `key` is the one told of it, or else the one heard; `heardKey` the one heard alone. */
export interface HeardNote extends Omit<z.output<typeof noteSchema>, 'key'> {
  readonly recordingId: string;
  readonly state: State;
  readonly key: number | undefined;
  readonly heardKey: number | undefined;
}

/** What was heard in a recording, and which keys of a walk are missing or came twice. */
export interface Heard {
  readonly notes: readonly HeardNote[];
  readonly missingKeys: readonly number[];
  readonly duplicateKeys: readonly number[];
}

/** The notes in what was worked out of a recording; nothing for an answer that is none. */
export function heardIn(recording: Pick<Recording, 'id' | 'state' | 'key' | 'contents'>, { answer, method }: Pick<Analysis, 'answer' | 'method'>): Heard | undefined {
  const run = method === 'tone-run' ? runSchema.safeParse(answer) : undefined;
  const single = method === 'tone-note' ? noteSchema.safeParse(answer) : undefined;
  const notes = run?.success === true ? run.data.notes : single?.success === true ? [single.data] : undefined;
  if (notes === undefined) return undefined;
  const told = recording.contents === 'walk' ? null : recording.key;
  return {
    notes: notes.map((note): HeardNote => ({ ...note, recordingId: recording.id, state: recording.state, heardKey: note.key, key: told ?? note.key })),
    missingKeys: run?.success === true ? run.data.missingKeys : [],
    duplicateKeys: run?.success === true ? run.data.duplicateKeys : [],
  };
}
