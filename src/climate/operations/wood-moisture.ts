import { woodMoistureOf } from '#materials';
import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { z } from 'zod';

/** Moisture that wood comes to in steady air. */
export const woodMoistureOperation = defineOperation({
  name: 'wood-moisture',
  input: z.strictObject({
    temperatureC: field.celsius({ min: -5, max: 60, describe: 'Temperature of the air' }),
    humidityPct: field.percent({ min: 0, max: 100, describe: 'Relative humidity of the air' }),
  }),
  output: z.strictObject({
    moisturePct: field.percent({ describe: 'Water in the wood, per cent of its dry mass; woods differ by about one per cent' }),
  }),
  formula: ['M = (1800/W)·[KH/(1 − KH) + (K₁KH + 2K₁K₂K²H²)/(1 + K₁KH + K₁K₂K²H²)]', 'W, K, K₁, K₂: quadratics in °C; H: relative humidity as a share'],
  sources: ['FPL-190'],
  example: { temperatureC: 20, humidityPct: 42 },
  run: (air) => ok({ moisturePct: woodMoistureOf(air) }),
});
