import { defineOperation, field } from '#operation';
import { type Result, all, andThen, map, ok, refuse, under } from '#result';
import { type Ratio, grams } from '#units';
import { z } from 'zod';
import { balanceWeightOf } from '../balance.ts';
import type { WeighedKey } from '../deviation.ts';
import { sectionWeightRatioOf, weightRatioOf } from '../parts.ts';
import { checkOrder, fields, weighedKeyShape } from '../schemas.ts';

const noteSchema = z.strictObject({ ...weighedKeyShape, helperSpringG: fields.helperSpringG.default(grams(0)) });

/** Action ratio by weights, of one note or of a section of one colour. */
export const weightRatioOperation = defineOperation({
  name: 'weight-ratio',
  input: z.union([noteSchema, z.strictObject({ notes: z.array(noteSchema).min(1).max(1000) })]),
  output: z.union([
    z.strictObject({ weightRatio: field.ratio() }),
    z.strictObject({
      weightRatio: field.ratio({ describe: 'The median' }),
      median: field.ratio(),
      perNote: z.array(field.ratio()),
    }),
  ]),
  formula: ['R = (BW + FW + S − K·WW)/SW', 'section: the median of its notes'],
  sources: ['OWN'],
  example: {
    notes: [
      { downWeightG: 49, upWeightG: 26, frontWeightG: 25, hammerWeightG: 9.2, wippenWeightG: 18, keyRatio: 0.511 },
      { downWeightG: 50, upWeightG: 26, frontWeightG: 24.5, hammerWeightG: 9.2, wippenWeightG: 18, keyRatio: 0.511 },
      { downWeightG: 49, upWeightG: 27, frontWeightG: 24, hammerWeightG: 9.1, wippenWeightG: 18, keyRatio: 0.511 },
    ],
  },
  run: (input) => {
    if (!('notes' in input)) return map(ratioOfNote(input), (one) => ({ weightRatio: one }));
    const perNote = all(input.notes.map((note, index) => placed(ratioOfNote(note), index)));
    return map(perNote, (ratios) => {
      const median = sectionWeightRatioOf(ratios);
      return { weightRatio: median, median, perNote: [...ratios] };
    });
  },
});

/** The ratio of one note; refuses parts that would leave the hammer weighing nothing at the key. */
function ratioOfNote(note: WeighedKey): Result<Ratio> {
  return andThen(checkOrder(note), () => {
    const found = weightRatioOf({ ...note, balanceWeightG: balanceWeightOf(note) });
    if (found > 0) return ok(found);
    const least = note.frontWeightG - found * note.hammerWeightG;
    return refuse({ code: 'range', path: 'frontWeightG', given: note.frontWeightG, allowed: `more than ${String(least)}, or the hammer would weigh nothing at the key`, params: { reason: 'hammerWeightless', above: least } });
  });
}

function placed<T>(result: Result<T>, index: number): Result<T> {
  return result.ok ? result : { ok: false, issues: under(`notes[${String(index)}]`, result.issues) };
}
