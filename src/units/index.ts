export { celsius, cents, cubicMetres, decibels, decibelsA, decibelsPerKilometre, degrees, gigapascals, gramMillimetres, gramSquareMillimetres, grams, gramsPerCubicCentimetre, gramsPerCubicMetre, gramsPerCubicMillimetre, gramsPerMetre, hertz, hours, kelvins, kilogramsPerCubicMetre, kilogramsPerSecond, kilopascals, megapascals, metresPerSecondSquared, millimetres, milliseconds, newtonSquareMetres, newtons, newtonsPerMillimetre, perKelvin, percent, ratio, seconds, squareMetres, squareMillimetres } from './brands.ts';
export type { Celsius, Cents, CubicMetres, Decibels, DecibelsA, DecibelsPerKilometre, Degrees, Gigapascals, GramMillimetres, GramSquareMillimetres, Grams, GramsPerCubicCentimetre, GramsPerCubicMetre, GramsPerCubicMillimetre, GramsPerMetre, Hertz, Hours, Kelvins, KilogramsPerCubicMetre, KilogramsPerSecond, Kilopascals, Megapascals, MetresPerSecondSquared, Millimetres, Milliseconds, NewtonSquareMetres, Newtons, NewtonsPerMillimetre, PerKelvin, Percent, Ratio, Seconds, SquareMetres, SquareMillimetres } from './brands.ts';
export { formatMeasure } from './format.ts';
export type { FormatOptions } from './format.ts';
export { parseMeasure } from './parse.ts';
export type { ParseOptions, ParsedMeasure } from './parse.ts';
export { STANDARD_GRAVITY_M_PER_S2, dimensionOf, unitSign } from './unit.ts';
export type { UnitId } from './unit.ts';
