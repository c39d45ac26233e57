import { type GrainDirection, type WoodSpecies, woodMoistureOf } from '#materials';
import { type PublishedCase, type PublishedFigure, figuresFrom, printedTo } from '#sources';
import { celsius, millimetres, percent } from '#units';
import { norris } from './season/norris.ts';
import { type Line, lineThrough } from './season/season-fit.ts';
import { absoluteHumidityOf, dewPointOf, humidityAt, saturationPressureHPa } from './moist-air.ts';
import { woodMovementOf } from './wood-movement.ts';

const air = (temperatureC: number, humidityPct: number) => ({ temperatureC: celsius(temperatureC), humidityPct: percent(humidityPct) });

/** Table 4-2: moisture at 30 to 90 °F. */
const humidities = [5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95] as const;
const moistures = [
  { fahrenheit: 50, pct: [1.4, 2.6, 3.6, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.3, 11.2, 12.3, 13.4, 14.8, 16.4, 18.4, 20.9, 24.3] },
  { fahrenheit: 70, pct: [1.3, 2.5, 3.5, 4.5, 5.4, 6.2, 6.9, 7.7, 8.5, 9.2, 10.1, 11.0, 12.0, 13.1, 14.4, 16.0, 17.9, 20.5, 23.9] },
  { fahrenheit: 90, pct: [1.2, 2.3, 3.4, 4.3, 5.1, 5.9, 6.7, 7.4, 8.1, 8.9, 9.7, 10.5, 11.5, 12.6, 13.9, 15.4, 17.3, 19.8, 23.3] },
] as const;

const moistureCases: readonly PublishedCase[] = moistures.flatMap(({ fahrenheit, pct }) => humidities.map((humidityPct, index): PublishedCase =>
  ['moisture, %', `${String(fahrenheit)} °F, ${String(humidityPct)} %`, pct[index] ?? Number.NaN, () => woodMoistureOf(air(((fahrenheit - 32) * 5) / 9, humidityPct))]));

/** A millimetre for each metre and per cent is the coefficient itself. */
const movement = (species: WoodSpecies, direction: GrainDirection, coefficient: number): PublishedCase =>
  ['movement of 1000 mm, mm', `${species}, ${direction}, 8 to 9 %`, 1000 * coefficient, () => woodMovementOf({ species, direction, widthMm: millimetres(1000) }, { fromPct: percent(8), toPct: percent(9) })];

/** °C and hPa. */
const vapour = [[0, 6.11], [10, 12.27], [20, 23.37], [30, 42.43]] as const;

/** A figure of the line through the pairs of Norris. */
const norrisLine = (name: keyof Line) => (): number => lineThrough(norris.map(([, x]) => x), norris.map(([y]) => y))?.[name] ?? Number.NaN;

/** Figures of climate that others worked out, beside this program's. */
export const publishedClimateFigures: readonly PublishedFigure[] = [
  ...figuresFrom('FPL-190', 'table 4-2', { tolerance: 0.1, because: 'printed to 1 decimal; the equation is a fit to the table' }, ...moistureCases),
  ...figuresFrom('FPL-190-13', 'table 13-5', { tolerance: 1e-9, because: 'exact but for binary' },
    movement('sugar-maple', 'radial', 0.00165), movement('sugar-maple', 'tangential', 0.00353),
    movement('american-beech', 'radial', 0.0019), movement('american-beech', 'tangential', 0.00431),
    movement('black-walnut', 'tangential', 0.00274)),
  ...vapour.flatMap(([temperature, expected]) => figuresFrom('WMO-8-TABLE', 'saturation over water', { tolerance: 0.003 * expected, because: '0.3 % is stated of the Magnus form, from memory' },
    ['vapour pressure, hPa', `${String(temperature)} °C`, expected, () => saturationPressureHPa(celsius(temperature))])),
  ...figuresFrom('NIST-STRD-NORRIS', 'certified values', { tolerance: 1e-11, because: 'certified to 15 digits; the line is worked out in double precision' },
    ['slope', '36 pairs', 1.00211681802045, norrisLine('slope')], ['uncertainty of the slope', '36 pairs', 0.000429796848199937, norrisLine('slopeUncertainty')]),
  ...figuresFrom('NIST-STRD-NORRIS', 'certified values', { tolerance: 1e-9, because: 'certified to 15 digits; the line is worked out in double precision' },
    ['value at nought', '36 pairs', -0.262323073774029, norrisLine('intercept')], ['uncertainty of that', '36 pairs', 0.232818234301152, norrisLine('interceptUncertainty')],
    ['scatter about the line', '36 pairs', 0.884796396144373, norrisLine('scatter')], ['degrees of freedom', '36 pairs', 34, norrisLine('freedom')]),
  ...figuresFrom('OWN', 'dew point and water in the air, worked by hand', printedTo(2),
    ['dew point, °C', '20 °C, 50 %', 9.26, () => dewPointOf(air(20, 50))],
    ['water, g/m³', '20 °C, 50 %', 8.62, () => absoluteHumidityOf(air(20, 50))]),
  ...figuresFrom('OWN', 'winter air warmed indoors, worked by hand', printedTo(0),
    ['humidity, %', '−5 °C and 85 % outside, 21 °C inside', 14, () => humidityAt(air(-5, 85), celsius(21))]),
];
