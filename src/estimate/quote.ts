import { type Currency, currencyOf, splitMinor, sumMinor, taxInGross, taxOnNet } from '#money';
import type { Alternative, Estimate, Quote } from '#workshop';
import type { EstimateFigures } from './figures.ts';

/** What a quote offers, as a copy of an estimate. */
export type Offer = Pick<Quote, 'title' | 'currency' | 'rounding' | 'tax' | 'includesTax' | 'lines'>;

/**
 * The offer of one alternative. For a customer’s instrument each line of the estimate is a line, and doubt, overhead and profit are spread over
 * them by cost so that they sum exactly to the price before tax. For an instrument of the shop the price is one, tax included: the stated sale price, else the total.
 */
export function offerOf(estimate: Estimate, alternative: Alternative, { lines, netMinor, totalMinor }: EstimateFigures): Offer {
  const { currency, rounding, owner, tax: { regime, ratePct } } = estimate;
  const shared = { title: alternative.words, currency, rounding, tax: { regime, ratePct } };
  if (owner === 'shop') return { ...shared, includesTax: true, lines: [{ id: 'instrument', words: alternative.words, amountMinor: alternative.saleMinor ?? totalMinor }] };
  const priced = lines.filter(({ costMinor }) => costMinor > 0);
  const amounts = priced.length === 0 ? [] : splitMinor(netMinor, priced.map(({ costMinor }) => costMinor));
  return { ...shared, includesTax: false, lines: priced.map(({ line }, index) => ({ id: line.id, words: line.words, amountMinor: Number(amounts[index]) })) };
}

/** The sums of a quote, all of it or the lines taken. */
export interface QuoteFigures {
  readonly currency: Currency;
  readonly lines: Quote['lines'];
  /** Sum of the lines as they stand. */
  readonly sumMinor: number;
  readonly taxMinor: number;
  readonly totalMinor: number;
  readonly stages: readonly { readonly words: string; readonly amountMinor: number }[];
}

/** Sums of a quote; tax is rounded once, on the sum, and the stages sum exactly to the total. Lines left out: those accepted, else all. */
export function quoteFiguresOf(quote: Quote, taken: readonly string[] | null = quote.acceptedLines): QuoteFigures {
  const { tax: { regime, ratePct }, rounding, includesTax, stages } = quote;
  const lines = taken === null ? quote.lines : quote.lines.filter(({ id }) => taken.includes(id));
  const sum = sumMinor(lines.map(({ amountMinor }) => amountMinor));
  const tax = regime !== 'ordinary' ? 0n : includesTax ? taxInGross(sum, ratePct, rounding) : taxOnNet(sum, ratePct, rounding);
  const total = includesTax ? sum : sum + tax;
  const parts = stages.length === 0 ? [] : splitMinor(total, stages.map(({ share }) => share));
  return {
    currency: currencyOf(quote.currency) ?? (quote.currency as Currency), lines,
    sumMinor: Number(sum), taxMinor: Number(tax), totalMinor: Number(total),
    stages: stages.map(({ words }, index) => ({ words, amountMinor: Number(parts[index]) })),
  };
}
