export { celsius, cents, degrees, gigapascals, gramMillimetres, grams, gramsPerMetre, hertz, kelvins, kilogramsPerCubicMetre, kilogramsPerSecond, megapascals, millimetres, newtonSquareMetres, newtons, newtonsPerMillimetre, perKelvin, percent, ratio, seconds } from './brands.ts';
export type { Celsius, Cents, Degrees, Gigapascals, GramMillimetres, Grams, GramsPerMetre, Hertz, Kelvins, KilogramsPerCubicMetre, KilogramsPerSecond, Megapascals, Millimetres, NewtonSquareMetres, Newtons, NewtonsPerMillimetre, PerKelvin, Percent, Ratio, Seconds } from './brands.ts';
export { formatMeasure } from './format.ts';
export type { FormatOptions } from './format.ts';
export { parseMeasure } from './parse.ts';
export type { ParseOptions, ParsedMeasure } from './parse.ts';
export { STANDARD_GRAVITY_M_PER_S2, dimensionOf, unitSign } from './unit.ts';
export type { UnitId } from './unit.ts';
