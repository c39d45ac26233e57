import { field } from '#operation';

/** Air that a piano may meet: a lorry in winter, an attic in summer. */
export const airShape = {
  temperatureC: field.celsius({ min: -40, max: 60, describe: 'Temperature of the air' }),
  humidityPct: field.percent({ min: 0.1, max: 100, describe: 'Relative humidity of the air' }),
} as const;
