import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { z } from 'zod';
import { fields } from '../schemas.ts';
import { uprightTouchOf } from '../upright-touch.ts';

const arm = (describe: string) => field.millimetres({ min: 0.01, max: 10_000, describe });
const weight = (describe: string) => field.grams({ min: 0, max: 10_000, describe });

/** Balance weight of an upright key from its parts, springs and damper. */
export const uprightTouchOperation = defineOperation({
  name: 'upright-touch',
  input: z.strictObject({
    keyFrontMm: arm('Balance point to the measuring point'),
    keyBackMm: arm('Balance point to the capstan contact'),
    wippenHeelMm: arm('Wippen centre to the contact at its heel'),
    wippenJackMm: arm('Wippen centre to the contact of jack and butt'),
    buttMm: arm('Hammer centre to the contact of jack and butt'),
    hammerMm: arm('Hammer centre to the strike point'),
    wippenWeightG: fields.wippenWeightG,
    damperG: weight('What lifting the damper adds at the capstan; 0 with the pedal down or before the spoon'),
    springTorqueGMm: field.gramMillimetres({ min: 0, max: 1e6, describe: 'Butt spring about the hammer centre' }),
    hammerMassG: weight('Hammer with its share of the shank, at the strike point'),
    tiltDeg: field.degrees({ min: -90, max: 90, describe: 'Hammer from upright; above 0 it leans away from the string' }),
    frontWeightG: fields.frontWeightG,
  }),
  output: z.strictObject({
    balanceWeightG: field.grams(),
    actionRatio: field.ratio({ describe: 'By distance' }),
    wippenG: field.grams(),
    damperShareG: field.grams(),
    springG: field.grams(),
    hammerG: field.grams({ describe: 'What the tilt of the hammer adds' }),
  }),
  formula: ['BW = K·(WW + damper) + (K·W/r_b)·(τ_spring + m·L·sin θ) − FW', 'K = b/a, W = w_j/w_c, R = K·W·L/r_b'],
  sources: ['OWN'],
  example: {
    keyFrontMm: 225, keyBackMm: 99, wippenHeelMm: 60, wippenJackMm: 90, buttMm: 20, hammerMm: 142.9,
    wippenWeightG: 35, damperG: 0, springTorqueGMm: 60, hammerMassG: 8, tiltDeg: 15, frontWeightG: 2,
  },
  run: (key) => ok(uprightTouchOf(key)),
});
