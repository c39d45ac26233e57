import { type Fraction, type Rounding, minorFrom, roundFraction, sumMinor } from '#money';
import { field } from '#operation';
import { type Result, all, andThen, map } from '#result';
import { z } from 'zod';
import { numberOf } from '../line-cost.ts';
import { knownCurrency } from './money-fields.ts';

/** What a line is. */
export const lineName = z.string().max(300).default('').describe('What the line is');

/** Lines with what each costs, before and after rounding, and their sum. */
export const costAnswer = <Shape extends z.ZodRawShape>(shape: Shape) => z.strictObject({
  amounts: z.array(z.strictObject({
    name: z.string().describe('What the line is'), ...shape,
    exactMinor: field.number({ describe: 'What it costs before rounding' }), amountMinor: field.minor({ describe: 'What it costs, rounded once' }),
  })),
  sumMinor: field.minor({ describe: 'The exact sum of the rounded amounts' }),
});

interface CostLines<Told> {
  readonly currency: string;
  readonly rounding: Rounding;
  /** Where the lines stand in the question. */
  readonly path: string;
  /** Each line as it is told, and its exact cost. */
  readonly lines: readonly { readonly told: Told; readonly exact: Fraction }[];
}

/** The lines with what each costs, rounded once, and their exact sum. Refused where an amount is too large to be held. */
export function costOfLines<Told extends object>({ currency, rounding, path, lines }: CostLines<Told>): Result<{ readonly amounts: (Told & { readonly exactMinor: number; readonly amountMinor: number })[]; readonly sumMinor: number }> {
  const rounded = lines.map(({ exact }) => roundFraction(exact, rounding));
  return andThen(knownCurrency(currency), () => andThen(all(rounded.map((amount, index) => minorFrom(amount, `${path}[${String(index)}]`))), (amounts) =>
    map(minorFrom(sumMinor(rounded), path), (sum) => ({
      amounts: lines.map(({ told, exact }, index) => ({ ...told, exactMinor: numberOf(exact), amountMinor: amounts[index] ?? 0 })), sumMinor: sum,
    }))));
}
