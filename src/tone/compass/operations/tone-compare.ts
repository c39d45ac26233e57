import { defineOperation, field } from '#operation';
import { map } from '#result';
import { z } from 'zod';
import { toneChangeOf } from '../compare.ts';
import { MOST_STRIKES, fields, refusalShape } from '../schemas.ts';

const told = (describe: string) => z.string().trim().min(1).max(200).describe(describe);

const state = z.strictObject({
  microphonePlace: told('Where the microphone stood; must be the same in both'),
  recordedWith: told('What recorded and how its gain was set; must be the same in both'),
  strikes: z.array(z.strictObject({
    key: fields.key, levelDb: fields.levelDb,
    partials: z.array(z.strictObject({ n: field.count({ min: 1, max: 200, describe: 'Number of the partial' }), levelDb: fields.levelDb })).min(1).max(200),
    decayS: fields.decayS.optional(),
  })).min(1).max(MOST_STRIKES),
});

const partials = [[1, -20], [2, -24], [3, -31], [4, -35]].map(([n, levelDb]) => ({ n, levelDb }));
const duller = [[1, -20], [2, -27], [3, -36], [4, -42]].map(([n, levelDb]) => ({ n, levelDb }));

/** Two states of a piano beside each other, as far as they may be. */
export const toneCompareOperation = defineOperation({
  name: 'tone-compare',
  input: z.strictObject({ before: state, after: state }),
  output: z.strictObject({
    keys: z.array(z.strictObject({
      key: field.count(),
      partials: z.array(field.count()).describe('Partials that every strike of both states has; brightness is of these alone'),
      atLevelDb: field.number({ describe: 'Middle of the levels both states hold' }).optional(),
      brightnessBefore: field.number({ describe: 'Harmonic centroid of those partials at that level' }).optional(),
      brightnessAfter: field.number().optional(),
      brightnessChange: field.number().optional(),
      changeUncertainty: field.number({ describe: 'Standard error; from three strikes a state on' }).optional(),
      decayRatio: field.number({ describe: 'Decay time after over before, medians of the strikes' }).optional(),
      refusals: z.array(refusalShape),
    })).describe('Keys that both states have'),
  }),
  formula: ['brightness = Σ n·A/Σ A over the partials common to all strikes, A = 10^(L/20)', 'read at the middle of the overlap of levels by least squares', 'single strikes only within 1 dB of each other'],
  sources: ['PEETERS-2011', 'OWN'],
  example: {
    before: { microphonePlace: 'lid full stick, 1 m from the bend', recordedWith: 'recorder, gain 5', strikes: [{ key: 40, levelDb: -26, partials, decayS: 4 }] },
    after: { microphonePlace: 'lid full stick, 1 m from the bend', recordedWith: 'recorder, gain 5', strikes: [{ key: 40, levelDb: -26.4, partials: duller, decayS: 5 }] },
  },
  run: ({ before, after }) => map(toneChangeOf(before, after), (keys) => ({
    keys: keys.map(({ before: brightnessBefore, after: brightnessAfter, change, partials: common, refusals, ...rest }) => ({
      ...rest, partials: [...common], refusals: [...refusals],
      ...(brightnessBefore === undefined ? {} : { brightnessBefore }), ...(brightnessAfter === undefined ? {} : { brightnessAfter }), ...(change === undefined ? {} : { brightnessChange: change }),
    })),
  })),
});
