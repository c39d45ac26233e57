import { defineOperation, field } from '#operation';
import { ok, refuse } from '#result';
import { z } from 'zod';
import { leastBoreOf, levelBoreOf, strikeOf } from '../hammer-bore.ts';

const height = (describe: string) => field.millimetres({ min: -10_000, max: 10_000, describe });
const length = (describe: string) => field.millimetres({ min: 0.01, max: 10_000, describe });

/** How a hammer of a bore and rake meets its string. */
export const hammerBoreOperation = defineOperation({
  name: 'hammer-bore',
  input: z.strictObject({
    stringHeightMm: height('String above the key bed at the strike point'),
    centreHeightMm: height('Hammer centre above the key bed'),
    boreMm: length('Shank to strike point, along the head'),
    hammerMm: length('Hammer centre to the middle of the head, along the shank'),
    rakeDeg: field.degrees({ min: -45, max: 45, describe: 'Head leaning out from square to its shank, away from the hammer centre' }),
  }),
  output: z.strictObject({
    shankDeg: field.degrees({ describe: 'Shank above level at the string; over-centre where above 0' }),
    strikeShiftMm: field.millimetres({ describe: 'Strike point nearer to the hammer centre than with the shank level' }),
    squarenessDeg: field.degrees({ describe: 'Head from square to the string: shank angle less rake' }),
    levelBoreMm: field.millimetres({ describe: 'Bore with which the shank would be level at the string' }),
  }),
  formula: ['C + L·sin φ + B·cos(φ − r) = S', 'shift = B·sin(φ − r) + L + B·sin r − L·cos φ', 'square: φ − r', 'level: B = (S − C)/cos r'],
  sources: ['OWN', 'TECH-LIST-BORE'],
  example: { stringHeightMm: 190, centreHeightMm: 140, boreMm: 49, hammerMm: 130, rakeDeg: 0 },
  run: (hammer) => {
    const { stringHeightMm, centreHeightMm } = hammer;
    if (centreHeightMm >= stringHeightMm) {
      const byMm = centreHeightMm - stringHeightMm;
      return refuse({ code: 'order', path: 'centreHeightMm', given: centreHeightMm, allowed: `below the string, ${String(stringHeightMm)}; it is ${String(byMm)} mm above`, params: { reason: 'centreAboveString', below: stringHeightMm, byMm } });
    }
    const strike = strikeOf(hammer);
    if (strike !== undefined) return ok({ ...strike, levelBoreMm: levelBoreOf(hammer) });
    const min = leastBoreOf(hammer);
    const [byMm, levelMm] = [min - hammer.boreMm, levelBoreOf(hammer)];
    return refuse({
      code: 'unreachable', path: 'boreMm', given: hammer.boreMm,
      allowed: `at least ${String(min)}, ${String(byMm)} mm more, to reach the string at all; ${String(levelMm)} with the shank level`,
      params: { reason: 'boreTooShort', min, byMm, levelMm },
    });
  },
});
