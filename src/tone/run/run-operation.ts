import type { Samples } from '#numerics';
import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { z } from 'zod';
import { nothingReasons } from '../listen.ts';
import { noteAnswerOf, noteShape } from '../note-answer.ts';
import { LEAD_S, partOf, takeDoubts, takeOf } from './take.ts';

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

/** Every note of a long take. */
export const toneRunOperation = defineOperation({
  name: 'tone-run',
  input: z.strictObject({ file: field.sound('A walk over the keys, or one key and then the next from soft to loud; each held, with a pause.') }),
  output: z.strictObject({
    kind: z.enum(['walk', 'ladder']).describe('walk: a strike a key; ladder: several of each'),
    notes: z.array(z.strictObject({ ...noteShape, startS: field.number(), endS: field.number(), loudnessDb: field.number({ describe: 'Mean power of the first half second, under full scale' }) })),
    missingKeys: z.array(field.count()).describe('Keys passed over, at the usual step of the walk'),
    duplicateKeys: z.array(field.count()).describe('Keys heard more often than the others'),
    doubtful: z.array(z.strictObject({
      startS: field.number(), endS: field.number(), doubt: z.enum(takeDoubts), key: field.count().optional(),
      reason: z.enum(nothingReasons).describe('Where nothing was heard, why').optional(),
    })).describe('Places to listen to again'),
  }),
  formula: ['strike: the level of two-third-octave bands rises by 3 dB and more over 60 ms, mean of the bands', 'each from its strike to the next is listened to as in tone-note', 'missing: between the lowest and the highest key, at the usual step'],
  sources: ['OWN', 'SCHROEDER-1965', 'ISO-3382', 'PEETERS-2011', 'DIN-45692'],
  example: { file: 'walk.wav' },
  exampleSound: exampleTake,
  run: ({ file }) => {
    const { kind, notes, missingKeys, duplicateKeys, doubtful } = takeOf(file);
    return ok({
      kind, missingKeys: [...missingKeys], duplicateKeys: [...duplicateKeys], doubtful: [...doubtful],
      notes: notes.map(({ startS, endS, loudnessDb, note }) => ({ ...noteAnswerOf(partOf(file, startS - LEAD_S, endS), note), startS, endS, loudnessDb })),
    });
  },
});
