import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { hertz } from '#units';
import { z } from 'zod';
import { levelOf } from './levels.ts';

const channel = z.strictObject({
  peakDb: field.number({ max: 120 }).nullable().describe('Largest sample, against full scale; null for a channel of zeros'),
  dcOffset: field.number().describe('Mean of all samples, full scale at 1'),
  clippedRuns: field.count({ describe: 'Runs of at least three samples at full scale' }),
});

const EXAMPLE_RATE_HZ = 8000;

/** How loud a recording is and whether it was clipped, channel by channel: to be looked at before anything is measured in it. */
export const recordingLevelOperation = defineOperation({
  name: 'recording-level',
  input: z.strictObject({ file: field.sound() }),
  output: z.strictObject({ sampleRateHz: field.hertz({ above: 0 }), durationS: field.number({ above: 0 }), channels: z.array(channel) }),
  formula: ['peak = 20 lg max |x|', 'offset = mean x', 'clipped: three or more samples in a row with |x| at full scale'],
  sources: ['PRACTICE'],
  example: { file: 'note.wav' },
  exampleSound: () => ({ sampleRateHz: EXAMPLE_RATE_HZ, channels: [Float64Array.from({ length: EXAMPLE_RATE_HZ / 4 }, (_, index) => 0.5 * Math.sin((2 * Math.PI * 440 * index) / EXAMPLE_RATE_HZ))] }),
  run: ({ file: { sampleRateHz, channels } }) =>
    ok({
      sampleRateHz: hertz(sampleRateHz),
      durationS: (channels[0]?.length ?? 0) / sampleRateHz,
      channels: channels.map((samples) => {
        const { peak, dcOffset, clippedRuns } = levelOf(samples, null);
        return { peakDb: peak === 0 ? null : 20 * Math.log10(peak), dcOffset, clippedRuns };
      }),
    }),
});
