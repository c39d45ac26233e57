import type { Samples } from '#numerics';
import { field } from '#operation';
import { ratio } from '#units';
import { z } from 'zod';
import { type FitMethod, type ToneNote, toneWarnings } from './listen.ts';
import { decayShape, descriptorsShape, refusalsShape } from './sound-schemas.ts';
import { soundOfNote } from './sound-of-note.ts';

const fitMethods = ['one-term', 'two-term', 'expected-stiffness'] as const satisfies readonly FitMethod[];

/** A note with its sound, as operations answer it. */
export const noteShape = {
  key: field.count({ min: 1, max: 128, describe: 'Key, named by listening' }),
  f0Hz: field.hertz({ describe: 'f0 of the law; the first partial lies a little above' }),
  f0UncertaintyHz: field.hertz({ describe: 'Standard uncertainty (k = 1) from the scatter about the law' }),
  offsetCents: field.cents({ describe: 'f0 against equal temperament of the key' }),
  inharmonicityB: field.ratio({ describe: 'Belongs to the law and the partials fitted' }).optional(),
  inharmonicityUncertainty: field.ratio({ describe: 'Standard uncertainty (k = 1)' }).optional(),
  fitMethod: z.enum(fitMethods).describe('Law of the fit'),
  fittedPartials: z.array(field.count()).describe('Partials the fit rests on'),
  unisonSpreadCents: field.cents({ describe: 'From the lowest to the highest string of the note' }),
  partials: z.array(z.strictObject({
    n: field.count({ describe: 'Number of the partial' }),
    frequencyHz: field.hertz(),
    levelDb: field.number({ describe: 'Under full scale, at the begin of the window' }),
    decayS: field.number({ describe: 'Early decay time of this partial, for 60 dB' }).optional(),
    decayLateS: field.number({ describe: 'Late decay time of this partial, for 60 dB' }).optional(),
  })),
  decay: decayShape.optional(),
  descriptors: descriptorsShape.optional(),
  refusals: refusalsShape,
  quality: z.strictObject({ snrDb: field.number({ describe: 'Tone over noise, whole band' }).optional(), clipped: z.boolean(), warnings: z.array(z.enum(toneWarnings)) }),
} as const;

/** A note and its sound in the fields of `noteShape`. */
export type NoteAnswer = z.output<z.ZodObject<typeof noteShape>>;

/** A note that was heard in some samples, its sound worked out, as operations answer it. */
export function noteAnswerOf(samples: Samples, note: ToneNote): NoteAnswer {
  const { decay, descriptors, partialDecays, refusals } = soundOfNote(samples, note);
  const { inharmonicityB, inharmonicityUncertainty } = note;
  return {
    key: note.key, f0Hz: note.f0Hz, f0UncertaintyHz: note.f0UncertaintyHz, offsetCents: note.offsetCents,
    ...(inharmonicityB === undefined ? {} : { inharmonicityB: ratio(inharmonicityB) }), ...(inharmonicityUncertainty === undefined ? {} : { inharmonicityUncertainty: ratio(inharmonicityUncertainty) }),
    fitMethod: note.fitMethod, fittedPartials: [...note.fittedPartials], unisonSpreadCents: note.unisonSpreadCents,
    partials: note.partials.map(({ n, frequencyHz, levelDb }) => ({ n, frequencyHz, levelDb, ...partialDecays.get(n) })),
    ...(decay === undefined ? {} : { decay }), ...(descriptors === undefined ? {} : { descriptors: { ...descriptors, partials: [...descriptors.partials] } }), refusals: [...refusals],
    quality: { ...(note.quality.snrDb === undefined ? {} : { snrDb: note.quality.snrDb }), clipped: note.quality.clipped, warnings: [...note.quality.warnings] },
  };
}
