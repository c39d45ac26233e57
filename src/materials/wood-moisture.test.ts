import { celsius, percent } from '#units';
import { expect, it } from 'vitest';
import { woodMoistureOf } from './index.ts';

// FPL-GTR-190, table 4-2, 70 °F: printed to one decimal.
it.each([[30, 6.2], [40, 7.7], [50, 9.2], [60, 11.0], [70, 13.1]] as const)('gives the moisture of table 4-2 of FPL-GTR-190 at 21.1 °C and %d %%: %d %%', (humidity, moisture) => {
  expect(Math.abs(woodMoistureOf({ temperatureC: celsius(21.1), humidityPct: percent(humidity) }) - moisture)).toBeLessThanOrEqual(0.06);
});
