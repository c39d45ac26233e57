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
/** Marks a number as a pure ratio. */
export const ratio = (value: number): Ratio => value as Ratio;
