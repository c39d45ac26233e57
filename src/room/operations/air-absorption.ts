import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { z } from 'zod';
import { airAbsorptionOf } from '../air-absorption.ts';
import { airShape } from '../schemas.ts';

/** What air takes from a sound. */
export const airAbsorptionOperation = defineOperation({
  name: 'air-absorption',
  input: z.strictObject({ ...airShape, frequencyHz: field.hertz({ min: 1, max: 100_000, describe: 'Frequency; for a table of the standard the exact midband, 7943.28 Hz for 8 kHz' }) }),
  output: z.strictObject({ dbPerKm: field.decibelsPerKilometre({ describe: 'Taken in a kilometre' }) }),
  formula: ['α = 8.686 f²·[1.84·10⁻¹¹ (p_r/p)·√(T/T₀) + (T/T₀)^(−5/2)·(0.01275 e^(−2239.1/T)/(f_O + f²/f_O) + 0.1068 e^(−3352/T)/(f_N + f²/f_N))]'],
  sources: ['ISO-9613-1'],
  example: { temperatureC: 20, humidityPct: 50, frequencyHz: 3981.07 },
  run: ({ frequencyHz, ...air }) => ok({ dbPerKm: airAbsorptionOf(air, frequencyHz) }),
});
