import { defineOperation, field } from '#operation';
import { ok, refuse } from '#result';
import { z } from 'zod';
import { strikeRatioOf } from '../hammers/strike-line.ts';

/** Where a hammer strikes its string. */
export const strikeRatioOperation = defineOperation({
  name: 'strike-ratio',
  input: z.strictObject({
    strikeDistanceMm: field.millimetres({ min: 0.01, max: 10_000, describe: 'Front end of the speaking length to the middle of the hammer' }),
    speakingLengthMm: field.millimetres({ min: 1, max: 10_000, describe: 'Speaking length of the same note' }),
  }),
  output: z.strictObject({
    strikeRatio: field.ratio({ describe: 'd/L' }),
    partsOfLength: field.number({ describe: 'L/d, as the trade says it: one part in so many' }),
  }),
  formula: ['d/L'],
  sources: ['OWN', 'CONKLIN-1990', 'STULOV-1995'],
  example: { strikeDistanceMm: 74.4, speakingLengthMm: 620 },
  run: (given) => {
    const { strikeDistanceMm: d, speakingLengthMm: length } = given;
    if (d >= length) return refuse({ code: 'order', path: 'strikeDistanceMm', given: d, allowed: `less than the speaking length, ${String(length)}`, params: { reason: 'strikeBeyond', below: length } });
    return ok({ strikeRatio: strikeRatioOf(given), partsOfLength: length / d });
  },
});
