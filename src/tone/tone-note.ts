import { defineOperation, field } from '#operation';
import type { Samples } from '#numerics';
import { map } from '#result';
import { z } from 'zod';
import { keyboardFields, listeningTo } from './keyboard-fields.ts';
import { type ListenOptions, type NothingHeard, type ToneNote, type TonePartial, listenToNote } from './listen.ts';
import { toneNoteSchema } from './note-schema.ts';
import { type SoundOfNote, soundOfNote } from './sound-of-note.ts';

/** A note as heard, with its decay, its descriptors and what of them is refused. */
export interface SoundingNote extends Omit<ToneNote, 'partials'>, Pick<SoundOfNote, 'decay' | 'descriptors' | 'summedPartials' | 'refusals' | 'loudnessDb'> {
  readonly partials: readonly (TonePartial & { readonly decayS?: number; readonly decayLateS?: number })[];
}

/** All that is worked out of a recording of one struck note. */
export function toneNoteOf(samples: Samples, options: ListenOptions = {}): SoundingNote | NothingHeard {
  const note = listenToNote(samples, options);
  return note.heard ? soundingNoteOf(samples, note) : note;
}

/** A note that was heard in some samples, with its sound. */
export function soundingNoteOf(samples: Samples, note: ToneNote): SoundingNote {
  const { partialDecays, ...sound } = soundOfNote(samples, note);
  return { ...note, ...sound, partials: note.partials.map((partial) => ({ ...partial, ...partialDecays.get(partial.n) })) };
}

const EXAMPLE_RATE_HZ = 16_000;

/** Eight partials of a string of 220 Hz, dying away. */
function exampleSound(): Samples {
  const partials = [1, 2, 3, 4, 5, 6, 7, 8].map((n) => ({ n, omega: (2 * Math.PI * 220 * n * Math.sqrt(1 + 2.2e-4 * n * n)) / EXAMPLE_RATE_HZ }));
  return { sampleRateHz: EXAMPLE_RATE_HZ, channels: [Float64Array.from({ length: 2 * EXAMPLE_RATE_HZ }, (_, t) => partials.reduce((sum, { n, omega }) => sum + (0.2 / n) * Math.exp((-t * (1 + n / 4)) / EXAMPLE_RATE_HZ) * Math.sin(omega * t), 0))] };
}

/** One struck note: its key, pitch, stiffness, partials, decay, brightness, and how far to trust them. */
export const toneNoteOperation = defineOperation({
  name: 'tone-note',
  input: z.strictObject({
    file: field.sound('One struck note.'),
    key: field.count({ min: 1, max: 128, describe: 'The key somebody says it is: compared with what is heard, never obeyed' }).optional(),
    ...keyboardFields,
  }),
  output: toneNoteSchema as unknown as z.ZodType<SoundingNote | NothingHeard>,
  formula: ['x(t) = Σ aₙ·e^(−αₙt)·cos(2πfₙt + φₙ)', 'ln(fₙ/n) = ln f0 + ½·ln(1 + B·n² [+ C·n⁴]), Tukey weights', 'offset = 1200·lg₂(f0/f_ET)', 'u from the scatter of ln fₙ about the law'],
  sources: ['FLETCHER-1964', 'GOLUB-PEREYRA-1973', 'KAUFMAN-1975', 'SCHWARZ-1978', 'TUKEY-BIWEIGHT', 'PAULE-MANDEL-1982', 'SCHROEDER-1965', 'PEETERS-2011', 'DIN-45692', 'OWN'],
  example: { file: 'note.wav' },
  exampleSound,
  run: ({ file, key, ...keyboard }) => map(listeningTo(keyboard), (options) => toneNoteOf(file, { ...(key === undefined ? {} : { key }), ...options })),
});
