declare const unit: unique symbol;

/** A number that carries its unit in its type; at run time it is a plain number. */
type Quantified<U extends string> = number & { readonly [unit]: U };

/** Gram-force at the key, or grams of mass: the trade reads both off the same scale. */
export type Grams = Quantified<'g'>;
export type Millimetres = Quantified<'mm'>;
export type Newtons = Quantified<'N'>;
export type Degrees = Quantified<'deg'>;
export type Hertz = Quantified<'Hz'>;
export type Cents = Quantified<'ct'>;
export type Seconds = Quantified<'s'>;
export type Celsius = Quantified<'degC'>;
export type Percent = Quantified<'pct'>;
/** Moment of a gram-force at a millimetre. */
export type GramMillimetres = Quantified<'gmm'>;
/** Moment of inertia of a part of an action. */
export type GramSquareMillimetres = Quantified<'g mm2'>;
/** Density where parts are small: lead has 0.01134. */
export type GramsPerCubicMillimetre = Quantified<'g/mm3'>;
export type SquareMillimetres = Quantified<'mm2'>;
export type Milliseconds = Quantified<'ms'>;
export type MetresPerSecondSquared = Quantified<'m/s2'>;
/** Stress or strength: one megapascal is one newton on a square millimetre. */
export type Megapascals = Quantified<'MPa'>;
export type Gigapascals = Quantified<'GPa'>;
/** Mass of a metre of string. */
export type GramsPerMetre = Quantified<'g/m'>;
export type KilogramsPerCubicMetre = Quantified<'kg/m3'>;
/** Wave impedance of a string. */
export type KilogramsPerSecond = Quantified<'kg/s'>;
/** Bending stiffness E·I. */
export type NewtonSquareMetres = Quantified<'N m2'>;
export type NewtonsPerMillimetre = Quantified<'N/mm'>;
export type SquareMetres = Quantified<'m2'>;
export type CubicMetres = Quantified<'m3'>;
export type Kilopascals = Quantified<'kPa'>;
/** Of water in air. */
export type GramsPerCubicMetre = Quantified<'g/m3'>;
/** Of worked material, as handbooks of it print density. */
export type GramsPerCubicCentimetre = Quantified<'g/cm3'>;
export type Decibels = Quantified<'dB'>;
/** A-weighted level of sound pressure over 20 µPa. */
export type DecibelsA = Quantified<'dB(A)'>;
/** What air takes from a sound on its way. */
export type DecibelsPerKilometre = Quantified<'dB/km'>;
export type Hours = Quantified<'h'>;
/** A difference of temperature. */
export type Kelvins = Quantified<'K'>;
/** Linear expansion for each kelvin. */
export type PerKelvin = Quantified<'1/K'>;
/** A pure number: a ratio, a share, a count of anything. */
export type Ratio = Quantified<'1'>;

/** Marks a number as grams. */
export const grams = (value: number): Grams => value as Grams;
/** Marks a number as millimetres. */
export const millimetres = (value: number): Millimetres => value as Millimetres;
/** Marks a number as newtons. */
export const newtons = (value: number): Newtons => value as Newtons;
/** Marks a number as degrees of arc. */
export const degrees = (value: number): Degrees => value as Degrees;
/** Marks a number as hertz. */
export const hertz = (value: number): Hertz => value as Hertz;
/** Marks a number as cents. */
export const cents = (value: number): Cents => value as Cents;
/** Marks a number as seconds. */
export const seconds = (value: number): Seconds => value as Seconds;
/** Marks a number as degrees Celsius. */
export const celsius = (value: number): Celsius => value as Celsius;
/** Marks a number as percent. */
export const percent = (value: number): Percent => value as Percent;
/** Marks a number as gram-millimetres. */
export const gramMillimetres = (value: number): GramMillimetres => value as GramMillimetres;
/** Marks a number as gram square millimetres. */
export const gramSquareMillimetres = (value: number): GramSquareMillimetres => value as GramSquareMillimetres;
/** Marks a number as grams a cubic millimetre. */
export const gramsPerCubicMillimetre = (value: number): GramsPerCubicMillimetre => value as GramsPerCubicMillimetre;
/** Marks a number as square millimetres. */
export const squareMillimetres = (value: number): SquareMillimetres => value as SquareMillimetres;
/** Marks a number as milliseconds. */
export const milliseconds = (value: number): Milliseconds => value as Milliseconds;
/** Marks a number as metres a second squared. */
export const metresPerSecondSquared = (value: number): MetresPerSecondSquared => value as MetresPerSecondSquared;
/** Marks a number as megapascals. */
export const megapascals = (value: number): Megapascals => value as Megapascals;
/** Marks a number as gigapascals. */
export const gigapascals = (value: number): Gigapascals => value as Gigapascals;
/** Marks a number as grams a metre. */
export const gramsPerMetre = (value: number): GramsPerMetre => value as GramsPerMetre;
/** Marks a number as kilograms a cubic metre. */
export const kilogramsPerCubicMetre = (value: number): KilogramsPerCubicMetre => value as KilogramsPerCubicMetre;
/** Marks a number as kilograms a second. */
export const kilogramsPerSecond = (value: number): KilogramsPerSecond => value as KilogramsPerSecond;
/** Marks a number as newton square metres. */
export const newtonSquareMetres = (value: number): NewtonSquareMetres => value as NewtonSquareMetres;
/** Marks a number as newtons a millimetre. */
export const newtonsPerMillimetre = (value: number): NewtonsPerMillimetre => value as NewtonsPerMillimetre;
/** Marks a number as kelvins of difference. */
export const kelvins = (value: number): Kelvins => value as Kelvins;
/** Marks a number as expansion for each kelvin. */
export const perKelvin = (value: number): PerKelvin => value as PerKelvin;
/** Marks a number as a pure ratio. */
export const ratio = (value: number): Ratio => value as Ratio;
/** Marks a number as square metres. */
export const squareMetres = (value: number): SquareMetres => value as SquareMetres;
/** Marks a number as cubic metres. */
export const cubicMetres = (value: number): CubicMetres => value as CubicMetres;
/** Marks a number as kilopascals. */
export const kilopascals = (value: number): Kilopascals => value as Kilopascals;
/** Marks a number as grams in a cubic metre. */
export const gramsPerCubicMetre = (value: number): GramsPerCubicMetre => value as GramsPerCubicMetre;
/** Marks a number as grams in a cubic centimetre. */
export const gramsPerCubicCentimetre = (value: number): GramsPerCubicCentimetre => value as GramsPerCubicCentimetre;
/** Marks a number as decibels. */
export const decibels = (value: number): Decibels => value as Decibels;
/** Marks a number as A-weighted decibels. */
export const decibelsA = (value: number): DecibelsA => value as DecibelsA;
/** Marks a number as decibels for each kilometre. */
export const decibelsPerKilometre = (value: number): DecibelsPerKilometre => value as DecibelsPerKilometre;
/** Marks a number as hours. */
export const hours = (value: number): Hours => value as Hours;
