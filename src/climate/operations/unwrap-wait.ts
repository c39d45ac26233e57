import { defineOperation, field } from '#operation';
import { ok, refuse } from '#result';
import { kelvins } from '#units';
import { z } from 'zod';
import { dewPointOf } from '../moist-air.ts';
import { airShape } from '../schemas.ts';
import { restOfWarmingOf, unwrapAt } from '../season/rest-of-warming.ts';

const surface = (describe: string) => field.celsius({ min: -40, max: 60, describe });

/** How warm a cold piano has to be before it is unwrapped, and from two measurements of its surface how long that takes. */
export const unwrapWaitOperation = defineOperation({
  name: 'unwrap-wait',
  input: z.strictObject({
    ...airShape,
    surfaceC: surface('Surface of the wrapped piano on arrival'),
    laterC: surface('The same place later').optional(),
    betweenHours: field.hours({ min: 0.1, max: 200, describe: 'Hours between the two' }).optional(),
  }),
  output: z.strictObject({
    dewPointC: field.celsius({ describe: 'At or below it water settles on a surface' }),
    unwrapC: field.celsius({ describe: 'What the surface has to reach: 3 K above the dew point' }),
    marginK: field.kelvins({ describe: 'How far the surface, as measured last, stands above the dew point' }),
    mayUnwrap: z.boolean().describe('Whether the surface, as measured last, has reached it'),
    waitHours: field.hours({ describe: 'Hours from the later measurement until it has; absent where the measurements do not tell' }).optional(),
  }),
  formula: ['T_unwrap = T_dew + 3 K', '(T_air − T₂)/(T_air − T₁) = exp(−Δt/τ)', 'wait = τ·ln[(T_air − T₂)/(T_air − T_unwrap)]'],
  sources: ['WMO-8', 'PRACTICE', 'OWN'],
  example: { temperatureC: 21, humidityPct: 45, surfaceC: 2, laterC: 6, betweenHours: 6 },
  run: ({ surfaceC, laterC, betweenHours, ...air }) => {
    if ((laterC === undefined) !== (betweenHours === undefined)) {
      const path = laterC === undefined ? 'laterC' : 'betweenHours';
      return refuse({ code: 'required', path, given: undefined, allowed: 'both a later temperature and the hours between, or neither', params: { kind: 'number' } });
    }
    const lastC = laterC ?? surfaceC;
    const [dewPointC, unwrapC] = [dewPointOf(air), unwrapAt(air)];
    const waitHours = laterC === undefined || betweenHours === undefined ? undefined : restOfWarmingOf({ air, surfaceC, laterC, betweenHours });
    return ok({ dewPointC, unwrapC, marginK: kelvins(lastC - dewPointC), mayUnwrap: lastC >= unwrapC, ...(waitHours === undefined ? {} : { waitHours }) });
  },
});
