import type { Say } from '#text';
import type { Estimate, Quote } from '#workshop';
import { sayMaybe } from '../language/say-maybe.ts';

/** `Full restoration, Action only (12 lines)`. */
export function sayEstimate(body: unknown): string {
  const { alternatives, lines } = body as Estimate;
  return `${alternatives.map(({ words }) => words).join(', ')} (${String(lines.length)})`;
}

/** `Full restoration, version 2`. */
export function sayQuote(body: unknown): string {
  const { title, version } = body as Quote;
  return `${title} (${String(version)})`;
}

/** The state a quote came to and the day, or the fields that changed. */
export function sayQuoteState(after: unknown, say: Say): string {
  const { state, sentOn, answeredOn } = after as Partial<Quote>;
  if (state === undefined) return Object.keys(after as object).map((field) => sayMaybe(say, `quote.field.${field}`)).join(', ');
  const day = answeredOn ?? sentOn ?? '';
  return `${say(`quote.state.${state}`)}${day === '' ? '' : `, ${day}`}`;
}
