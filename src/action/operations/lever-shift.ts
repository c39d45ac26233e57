import { defineOperation, field } from '#operation';
import { type Issue, ok, refuse } from '#result';
import { millimetres, percent, ratio } from '#units';
import { z } from 'zod';
import { type LeverShift, rollerSizeEffectOf, shiftedLeversOf } from '../lever-shift.ts';
import { type Levers, leverRatiosOf } from '../levers.ts';
import { fields } from '../schemas.ts';

const shift = (describe: string) => field.millimetres({ min: -100, max: 100, describe }).default(millimetres(0));

/** What moving the capstan line, the roller or its size does to the ratio and the hammer. */
export const leverShiftOperation = defineOperation({
  name: 'lever-shift',
  input: z.strictObject({
    levers: fields.levers,
    capstanTowardPlayerMm: shift('Capstan line toward the player; below 0 toward the back'),
    rollerOutMm: shift('Roller away from the hammer centre; below 0 toward it'),
    jackFollows: z.boolean().default(false).describe('Jack set after the roller, and its arm with it'),
    rollerThickerMm: shift('Diameter of the roller, more; below 0 less'),
    weightRatio: field.ratio({ min: 0.01, max: 100, describe: 'By weights, before; it changes by the same share as the ratio by distance' }).optional(),
  }),
  output: z.strictObject({
    levers: fields.levers,
    keyRatio: field.ratio(),
    wippenRatio: field.ratio(),
    hammerRatio: field.ratio(),
    actionRatio: field.ratio(),
    actionRatioChangePct: field.percent(),
    weightRatio: field.ratio({ describe: 'By weights, after' }).optional(),
    hammerLiftMm: field.millimetres({ describe: 'By the size of the roller' }),
    capstanDownMm: field.millimetres({ describe: 'Capstan let down for the blow as before' }),
  }),
  formula: ['b − c, w_c + c, r + p', 'w_j − p where the jack follows', 'lift = δ/2·H', 'capstan = δ/2/W', 'R_weights′ = R_weights·R_distance′/R_distance'],
  sources: ['OWN'],
  example: { levers: { keyFrontMm: 225, keyBackMm: 115, wippenHeelMm: 65, wippenJackMm: 96, rollerMm: 17, hammerMm: 130 }, capstanTowardPlayerMm: 2, rollerOutMm: 0, jackFollows: false, rollerThickerMm: 0.5 },
  run: ({ levers, rollerThickerMm, weightRatio, ...shifts }) => {
    const moved = shiftedLeversOf(levers, shifts);
    const issues = lostArms(levers, moved, shifts);
    if (issues.length > 0) return refuse(...issues);
    const ratios = leverRatiosOf(moved);
    const change = ratios.actionRatio / leverRatiosOf(levers).actionRatio;
    return ok({
      levers: moved, ...ratios,
      actionRatioChangePct: percent(100 * (change - 1)),
      ...(weightRatio === undefined ? {} : { weightRatio: ratio(weightRatio * change) }),
      ...rollerSizeEffectOf(moved, rollerThickerMm),
    });
  },
});

/** Shifts that leave no arm: beyond a centre. */
function lostArms(levers: Levers, moved: Levers, shifts: LeverShift): readonly Issue[] {
  const lost = (path: 'capstanTowardPlayerMm' | 'rollerOutMm', arms: readonly (keyof Levers)[], back: number, max: number): readonly Issue[] =>
    arms.every((arm) => moved[arm] > 0) ? [] : [{ code: 'range', path, given: shifts[path], allowed: `more than ${String(-back)} and less than ${String(max)}, or a contact would pass its centre`, params: { reason: 'pastCentre', above: -back, below: max } }];
  return [
    ...lost('capstanTowardPlayerMm', ['keyBackMm', 'wippenHeelMm'], levers.wippenHeelMm, levers.keyBackMm),
    ...lost('rollerOutMm', ['wippenJackMm', 'rollerMm'], levers.rollerMm, shifts.jackFollows ? levers.wippenJackMm : 100),
  ];
}
