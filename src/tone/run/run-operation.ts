import type { Samples } from '#numerics';
import { defineOperation, field } from '#operation';
import { map } from '#result';
import { seconds } from '#units';
import { z } from 'zod';
import { nothingReasons } from '../listen.ts';
import { keyboardFields, listeningTo } from '../keyboard-fields.ts';
import { soundingNoteSchema } from '../note-schema.ts';
import { type SoundingNote, soundingNoteOf } from '../tone-note.ts';
import { type Take, type TakeNote, type TakeOptions, stretchOfNote, takeDoubts, takeOf } from './take.ts';

const EXAMPLE_RATE_HZ = 16_000;

/** Two keys struck one after the other: damped cosines in the proportions of a stiff string. */
function exampleTake(): Samples {
  const sound = new Float64Array(4 * EXAMPLE_RATE_HZ);
  for (const [atS, f0Hz] of [[0.2, 261.6], [2.1, 277.2]] as const) for (let n = 1; n <= 12; n++) {
    const frequencyHz = n * f0Hz * Math.sqrt(1 + 4e-4 * n * n);
    for (let at = Math.round(atS * EXAMPLE_RATE_HZ); at < Math.min(sound.length, (atS + 1.8) * EXAMPLE_RATE_HZ); at++) {
      const t = at / EXAMPLE_RATE_HZ - atS;
      sound[at] = (sound[at] ?? 0) + (0.2 / n) * Math.exp(-t * (0.8 + 0.3 * n)) * Math.sin(2 * Math.PI * frequencyHz * t + n);
    }
  }
  return { sampleRateHz: EXAMPLE_RATE_HZ, channels: [sound] };
}

/** A note of a take with its sound; every time is that of the take. */
export type SoundingTakeNote = SoundingNote & Omit<TakeNote, 'note'>;

/** A take with the sound of each of its notes. */
export interface SoundingTake extends Omit<Take, 'notes'> {
  readonly notes: readonly SoundingTakeNote[];
}

/** Share of the work that finding the notes takes; the rest is their sound. */
const FINDING_SHARE = 0.7;

/** All that is worked out of a long take: its notes found, each with decay and descriptors. */
export function toneRunOf(samples: Samples, { onProgress = () => undefined, ...options }: TakeOptions = {}): SoundingTake {
  const { notes, ...take } = takeOf(samples, { ...options, onProgress: (part) => { onProgress(FINDING_SHARE * part); } });
  return {
    ...take,
    notes: notes.map((note, index) => {
      onProgress(FINDING_SHARE + ((1 - FINDING_SHARE) * index) / notes.length);
      return soundingIn(samples, note);
    }),
  };
}

function soundingIn(take: Samples, { note, startS, endS, loudnessDb }: TakeNote): SoundingTakeNote {
  const { samples, fromS } = stretchOfNote(take, { startS, endS });
  const sounding = soundingNoteOf(samples, note);
  const { descriptors } = sounding;
  return {
    ...sounding, ...(descriptors === undefined ? {} : { descriptors: { ...descriptors, windowFromS: descriptors.windowFromS + fromS } }),
    onsetS: seconds(sounding.onsetS + fromS), windowFromS: seconds(sounding.windowFromS + fromS), windowToS: seconds(sounding.windowToS + fromS), startS, endS: seconds(endS), loudnessDb,
  };
}

const takeSchema = z.strictObject({
  kind: z.enum(['walk', 'ladder']).describe('walk: a strike a key; ladder: several of each'),
  notes: z.array(soundingNoteSchema.extend({ startS: field.number({ describe: 'Strike; every time is that of the take' }) })),
  missingKeys: z.array(field.count()).describe('Keys passed over, at the usual step of the walk'),
  duplicateKeys: z.array(field.count()).describe('Keys heard more often than the others'),
  doubtful: z.array(z.strictObject({
    startS: field.number(), endS: field.number(), doubt: z.enum(takeDoubts), key: field.count().optional(),
    reason: z.enum(nothingReasons).describe('Where nothing was heard, why').optional(),
  })).describe('Places to listen to again'),
  methodVersion: field.count(),
});

/** Every note of a long take. */
export const toneRunOperation = defineOperation({
  name: 'tone-run',
  input: z.strictObject({ file: field.sound('A walk over the keys, or one key and then the next from soft to loud; each held, with a pause.'), ...keyboardFields }),
  output: takeSchema as unknown as z.ZodType<SoundingTake>,
  formula: ['strike: the level of two-third-octave bands rises by 3 dB and more over 60 ms, mean of the bands', 'each from its strike to the next is listened to as in tone-note', 'missing: between the lowest and the highest key, at the usual step'],
  sources: ['OWN', 'SCHROEDER-1965', 'ISO-3382', 'PEETERS-2011', 'DIN-45692'],
  example: { file: 'walk.wav' },
  exampleSound: exampleTake,
  run: ({ file, ...keyboard }) => map(listeningTo(keyboard), (options) => toneRunOf(file, options)),
});
