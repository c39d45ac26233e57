import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { kelvins } from '#units';
import { z } from 'zod';
import { absoluteHumidityOf, dewPointOf, humidityAt } from '../moist-air.ts';
import { airShape } from '../schemas.ts';

/** Dew point of a room, and whether a cold piano carried into it would gather water. */
export const dewPointOperation = defineOperation({
  name: 'dew-point',
  input: z.strictObject({
    ...airShape,
    surfaceC: field.celsius({ min: -40, max: 60, describe: 'Temperature of the piano’s surface' }).optional(),
  }),
  output: z.strictObject({
    dewPointC: field.celsius({ describe: 'At or below it water settles on a surface' }),
    absoluteGPerM3: field.gramsPerCubicMetre({ describe: 'Water in the air' }),
    marginK: field.kelvins({ describe: 'How far the surface stands above the dew point; at or below nought it gathers water' }).optional(),
    humidityAtSurfacePct: field.percent({ describe: 'Relative humidity of the same air at the surface; more than 100: water settles out' }).optional(),
  }),
  formula: ['γ = ln(H/100) + 17.62 t/(243.12 + t)', 'T_d = 243.12 γ/(17.62 − γ)', 'e = 6.112·exp[17.62 t/(243.12 + t)] hPa', 'absolute = 216.7·(H/100)·e/(t + 273.15)'],
  sources: ['WMO-8'],
  example: { temperatureC: 21, humidityPct: 45, surfaceC: 2 },
  run: ({ surfaceC, ...air }) => {
    const dewPointC = dewPointOf(air);
    return ok({
      dewPointC,
      absoluteGPerM3: absoluteHumidityOf(air),
      ...(surfaceC === undefined ? {} : { marginK: kelvins(surfaceC - dewPointC), humidityAtSurfacePct: humidityAt(air, surfaceC) }),
    });
  },
});
