import type {
  Celsius, Cents, CubicMetres, Decibels, DecibelsA, DecibelsPerKilometre, Degrees, Gigapascals, GramMillimetres, GramSquareMillimetres, Grams, GramsPerCubicCentimetre, GramsPerCubicMetre,
  GramsPerCubicMillimetre, GramsPerMetre, Hertz, Hours, Kelvins, KilogramsPerCubicMetre, KilogramsPerSecond, Kilopascals,
  Megapascals, MetresPerSecondSquared, Millimetres, Milliseconds, NewtonSquareMetres, Newtons, NewtonsPerMillimetre, PerKelvin, Percent, Ratio, Seconds, SquareMetres, SquareMillimetres,
} from '#units';
import { z } from 'zod';
import { soundField } from './sound.ts';

export interface Range {
  readonly min?: number;
  readonly max?: number;
  /** Smallest value excluded, as for a length that must be more than nothing. */
  readonly above?: number;
  readonly describe?: string;
}

/** A finite number in a range, typed with its unit. The JSON Schema shows plain number, minimum, maximum, description. */
function branded<T extends number>(range: Range): z.ZodType<T, number> {
  let schema = z.number();
  if (range.min !== undefined) schema = schema.gte(range.min);
  if (range.above !== undefined) schema = schema.gt(range.above);
  if (range.max !== undefined) schema = schema.lte(range.max);
  if (range.describe !== undefined) schema = schema.describe(range.describe);
  return schema as unknown as z.ZodType<T, number>;
}

/** Schema makers for the fields of operations: one per unit. Ranges are what is physically possible; `1e999` and NaN never pass. */
export const field = {
  grams: (range: Range = {}) => branded<Grams>(range),
  millimetres: (range: Range = {}) => branded<Millimetres>(range),
  newtons: (range: Range = {}) => branded<Newtons>(range),
  degrees: (range: Range = {}) => branded<Degrees>(range),
  gramMillimetres: (range: Range = {}) => branded<GramMillimetres>(range),
  gramSquareMillimetres: (range: Range = {}) => branded<GramSquareMillimetres>(range),
  gramsPerCubicMillimetre: (range: Range = {}) => branded<GramsPerCubicMillimetre>(range),
  squareMillimetres: (range: Range = {}) => branded<SquareMillimetres>(range),
  milliseconds: (range: Range = {}) => branded<Milliseconds>(range),
  metresPerSecondSquared: (range: Range = {}) => branded<MetresPerSecondSquared>(range),
  hertz: (range: Range = {}) => branded<Hertz>(range),
  cents: (range: Range = {}) => branded<Cents>(range),
  megapascals: (range: Range = {}) => branded<Megapascals>(range),
  gigapascals: (range: Range = {}) => branded<Gigapascals>(range),
  gramsPerMetre: (range: Range = {}) => branded<GramsPerMetre>(range),
  kilogramsPerCubicMetre: (range: Range = {}) => branded<KilogramsPerCubicMetre>(range),
  kilogramsPerSecond: (range: Range = {}) => branded<KilogramsPerSecond>(range),
  newtonSquareMetres: (range: Range = {}) => branded<NewtonSquareMetres>(range),
  newtonsPerMillimetre: (range: Range = {}) => branded<NewtonsPerMillimetre>(range),
  celsius: (range: Range = {}) => branded<Celsius>(range),
  squareMetres: (range: Range = {}) => branded<SquareMetres>(range),
  cubicMetres: (range: Range = {}) => branded<CubicMetres>(range),
  kilopascals: (range: Range = {}) => branded<Kilopascals>(range),
  gramsPerCubicMetre: (range: Range = {}) => branded<GramsPerCubicMetre>(range),
  gramsPerCubicCentimetre: (range: Range = {}) => branded<GramsPerCubicCentimetre>(range),
  decibels: (range: Range = {}) => branded<Decibels>(range),
  decibelsA: (range: Range = {}) => branded<DecibelsA>(range),
  decibelsPerKilometre: (range: Range = {}) => branded<DecibelsPerKilometre>(range),
  seconds: (range: Range = {}) => branded<Seconds>(range),
  hours: (range: Range = {}) => branded<Hours>(range),
  kelvins: (range: Range = {}) => branded<Kelvins>(range),
  perKelvin: (range: Range = {}) => branded<PerKelvin>(range),
  percent: (range: Range = {}) => branded<Percent>(range),
  ratio: (range: Range = {}) => branded<Ratio>(range),
  /** A pure number without a unit of its own, such as a count of sigmas or a smoothing strength. */
  number: (range: Range = {}) => branded<number>(range),
  /** Money in whole smallest units of its currency, held to the last unit. */
  minor: ({ min = Number.MIN_SAFE_INTEGER, max = Number.MAX_SAFE_INTEGER, describe = '' }: Range = {}) => z.number().int().gte(min).lte(max).describe(describe),
  /** A recording; `run` is given its samples. */
  sound: soundField,
  count: ({ min = 0, max = 1_000_000, describe = '' }: Range = {}) => z.number().int().gte(min).lte(max).describe(describe),
} as const;
