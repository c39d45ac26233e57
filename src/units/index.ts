export { celsius, cents, degrees, gigapascals, gramMillimetres, gramSquareMillimetres, grams, gramsPerCubicMillimetre, gramsPerMetre, hertz, kelvins, kilogramsPerCubicMetre, kilogramsPerSecond, megapascals, metresPerSecondSquared, millimetres, milliseconds, newtonSquareMetres, newtons, newtonsPerMillimetre, perKelvin, percent, ratio, seconds, squareMillimetres } from './brands.ts';
export type { Celsius, Cents, Degrees, Gigapascals, GramMillimetres, GramSquareMillimetres, Grams, GramsPerCubicMillimetre, GramsPerMetre, Hertz, Kelvins, KilogramsPerCubicMetre, KilogramsPerSecond, Megapascals, MetresPerSecondSquared, Millimetres, Milliseconds, NewtonSquareMetres, Newtons, NewtonsPerMillimetre, PerKelvin, Percent, Ratio, Seconds, SquareMillimetres } from './brands.ts';
export { formatMeasure } from './format.ts';
export type { FormatOptions } from './format.ts';
export { parseMeasure } from './parse.ts';
export type { ParseOptions, ParsedMeasure } from './parse.ts';
export { STANDARD_GRAVITY_M_PER_S2, dimensionOf, unitSign } from './unit.ts';
export type { UnitId } from './unit.ts';
