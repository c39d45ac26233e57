import { defineOperation, field } from '#operation';
import { type Issue, ok, refuse } from '#result';
import { sumOf } from '#numerics';
import { z } from 'zod';
import { actionLevelOf, actionLevels, dailyExposureOf } from '../exposure.ts';

const DAY_H = 24;

/** What a day of playing, tuning or listening adds up to for the ear. */
export const noiseExposureOperation = defineOperation({
  name: 'noise-exposure',
  input: z.strictObject({
    spans: z.array(z.strictObject({
      levelDbA: field.decibelsA({ min: 0, max: 150, describe: 'A-weighted level over the span' }),
      hours: field.hours({ min: 0.001, max: DAY_H, describe: 'How long' }),
    })).min(1).max(200).describe('Spans of one day'),
  }),
  output: z.strictObject({
    dailyDbA: field.decibelsA({ describe: 'Even level over eight hours with the same energy' }),
    actionLevel: z.enum(actionLevels).describe('Highest level of the directive that is reached: below all, lower 80, upper 85, limit 87'),
  }),
  formula: ['L_EX,8h = 10·lg(Σ tᵢ·10^(Lᵢ/10)/8 h)', 'half the time allows 3 dB more'],
  sources: ['EU-2003-10', 'ISO-1999'],
  example: { spans: [{ levelDbA: 93, hours: 2 }] },
  run: ({ spans }) => {
    const total = sumOf(spans.map(({ hours }) => hours));
    if (total > DAY_H) return refuse(longDay(total));
    const dailyDbA = dailyExposureOf(spans);
    return ok({ dailyDbA, actionLevel: actionLevelOf(dailyDbA) });
  },
});

const longDay = (total: number): Issue => ({ code: 'range', path: 'spans', given: total, allowed: 'spans of one day, 24 hours together or less', params: { reason: 'longDay', max: DAY_H } });
