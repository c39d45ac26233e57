import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { z } from 'zod';
import { frictionBudgetOf } from '../friction-budget.ts';
import { fields } from '../schemas.ts';

const torque = (describe: string) => field.gramMillimetres({ min: 0, max: 1e6, describe });
const coefficient = (describe: string) => field.ratio({ min: 0, max: 10, describe });
const offset = (describe: string) => field.millimetres({ min: 0, max: 1000, describe });

/** Where the friction at the key front comes from. */
export const frictionBudgetOperation = defineOperation({
  name: 'friction-budget',
  input: z.strictObject({
    levers: fields.levers,
    hammerWeightG: fields.hammerWeightG,
    wippenWeightG: fields.wippenWeightG,
    keyFrictionG: field.grams({ min: 0, max: 10_000, describe: 'Friction of the key alone at its front, the stack off' }),
    wippenTorqueGMm: torque('Torque of the wippen centre'),
    hammerTorqueGMm: torque('Torque of the hammer centre'),
    capstanFriction: coefficient('Coefficient of friction of capstan and wippen heel'),
    capstanOffsetMm: offset('Mean distance of the capstan contact from the line of centres'),
    rollerFriction: coefficient('Coefficient of friction of jack and roller'),
    rollerOffsetMm: offset('Mean distance of the roller contact from the line of centres'),
  }),
  output: z.strictObject({ keyG: field.grams(), wippenG: field.grams(), hammerG: field.grams(), capstanG: field.grams(), rollerG: field.grams(), totalG: field.grams() }),
  formula: [
    'F = KF + τ_w·K/w_c + τ_h·R/L + μ_c·N_c·(1/a + K/w_c)·e_c + μ_r·N_r·(K/w_c + R/L)·e_r',
    'N_r = SW·H',
    'N_c = N_r·W + WW',
  ],
  sources: ['OWN'],
  example: {
    levers: { keyFrontMm: 225, keyBackMm: 115, wippenHeelMm: 65, wippenJackMm: 96, rollerMm: 17, hammerMm: 130 },
    hammerWeightG: 9.2, wippenWeightG: 18, keyFrictionG: 2, wippenTorqueGMm: 60, hammerTorqueGMm: 60,
    capstanFriction: 0.2, capstanOffsetMm: 2, rollerFriction: 0.2, rollerOffsetMm: 6,
  },
  run: (sources) => ok(frictionBudgetOf(sources)),
});
