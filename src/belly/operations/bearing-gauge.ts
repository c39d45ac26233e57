import { defineOperation, field } from '#operation';
import { map, ok } from '#result';
import { millimetres } from '#units';
import { z } from 'zod';
import { gaugeForceOf } from '../as-read.ts';
import { gaugeAngleOf, gaugeReadingOf, gaugeUncertaintyOf } from '../gauge.ts';
import { pullOf } from '../pull.ts';
import { noteShape } from '../schemas.ts';

const span = (describe: string) => field.millimetres({ min: 0.1, max: 1000, describe });
const angle = (describe: string) => field.degrees({ min: -80, max: 80, describe });
const uncertainty = (describe: string) => field.millimetres({ min: 0, max: 100, describe }).optional();

const spans = {
  frontSpanMm: span('From the foot on the bridge to the foot before it'),
  rearSpanMm: span('From the foot on the bridge to the foot behind it'),
} as const;

/** What a gauge of three feet reads, or the angle behind its reading. */
export const bearingGaugeOperation = defineOperation({
  name: 'bearing-gauge',
  input: z.union([
    z.strictObject({ ...spans, frontDeg: angle('Before the bridge'), rearDeg: angle('Behind the bridge') }),
    z.strictObject({
      ...spans,
      readingMm: field.millimetres({ min: -1000, max: 1000, describe: 'Foot on the bridge over the line of the outer two' }),
      readingUncertaintyMm: uncertainty('Standard uncertainty of the reading'),
      spanUncertaintyMm: uncertainty('Standard uncertainty of either span'),
      tensionN: noteShape.tensionN.optional(),
      strings: noteShape.strings.optional(),
    }),
  ]),
  output: z.union([
    z.strictObject({ readingMm: field.millimetres() }),
    z.strictObject({ totalDeg: field.degrees({ describe: 'Front and rear together; the reading does not tell them apart' }), totalUncertaintyDeg: field.degrees({ describe: 'Standard uncertainty (k = 1)' }).optional(), forceN: field.newtons({ describe: 'Of all strings of the note, where tension and count are given' }).optional() }),
  ]),
  formula: ['r = s_f·s_r/(s_f + s_r)·(tan a + tan b)', 'a + b = atan(r/s_f) + atan(r/s_r)', 'F = n·T·(sin atan(r/s_f) + sin atan(r/s_r))'],
  sources: ['OWN', 'VARIGNON-1687', 'JCGM-100'],
  example: { frontSpanMm: 25, rearSpanMm: 25, frontDeg: 0.4, rearDeg: 0.6 },
  run: (input) => {
    if (!('readingMm' in input)) return ok({ readingMm: gaugeReadingOf(input) });
    const { readingUncertaintyMm, spanUncertaintyMm } = input;
    return map(pullOf(input), (pull) => ({
      totalDeg: gaugeAngleOf(input),
      ...(readingUncertaintyMm === undefined && spanUncertaintyMm === undefined ? {} : { totalUncertaintyDeg: gaugeUncertaintyOf(input, { readingUncertaintyMm: readingUncertaintyMm ?? millimetres(0), spanUncertaintyMm: spanUncertaintyMm ?? millimetres(0) }) }),
      ...(pull === undefined ? {} : { forceN: gaugeForceOf(input, pull) }),
    }));
  },
});
