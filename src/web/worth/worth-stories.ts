import { type DecidedWay, breakEvenAsked, type estimateSums, hoursAsked, jobPriceAsked, linesOfWay } from '#estimate';
import type { Estimate } from '#workshop';
import type { FigureStory, Origin } from '../figure/figure-store.ts';

/** How the hours of a way were drawn; nothing where it holds no work. */
export function hoursStory(title: string, estimate: Estimate, { alternative }: DecidedWay, output: string): FigureStory | undefined {
  const asked = hoursAsked(estimate, alternative);
  return asked === undefined ? undefined : { title, operation: 'three-point-hours', input: { ...asked }, output };
}

/** How a sum of a way was made: of its lines, or from the sums before it to the price. */
export function sumStory(title: string, estimate: Estimate, { alternative, figures }: DecidedWay, sum: (typeof estimateSums)[number]): FigureStory {
  const { currency, rounding } = estimate;
  if (sum === 'labourMinor') {
    const tasks = linesOfWay(estimate, alternative, 'labour').map(({ words, low, likely, high, chancePct, rateMinor }) => ({ name: words, low, likely, high, chancePct, rateMinor: rateMinor ?? estimate.rateMinor }));
    return { title, operation: 'work-cost', output: 'sumMinor', input: { tasks, currency, rounding }, origins: stated('tasks', 'currency', 'rounding') };
  }
  if (sum === 'partsMinor' || sum === 'outsideMinor') {
    const items = sum === 'partsMinor'
      ? linesOfWay(estimate, alternative, 'part').map(({ words, quantity, priceMinor }) => ({ name: words, quantity, priceMinor }))
      : linesOfWay(estimate, alternative, 'outside').map(({ words, priceMinor }) => ({ name: words, quantity: 1, priceMinor }));
    return { title, operation: 'item-cost', output: 'sumMinor', input: { items, currency, rounding }, origins: stated('items', 'currency', 'rounding') };
  }
  const { labourMinor, partsMinor, outsideMinor, hours } = figures;
  const { contingencyPct, ...asked } = jobPriceAsked(estimate, { labourMinor, partsMinor, outsideMinor }, hours);
  // Where doubt is taken from the hours, the estimate states no share of it.
  const input = { ...asked, ...(estimate.contingency.kind === 'pct' ? { contingencyPct } : {}), currency };
  const rows: Readonly<Record<string, Origin>> = Object.fromEntries(['labourMinor', 'partsMinor', 'outsideMinor', 'doubt.expectedH', 'doubt.withinH'].map((path) => [path, { how: 'waySum' }]));
  return { title, operation: 'job-price', output: sum, input, origins: { ...stated(...Object.keys(input).filter((path) => path !== 'doubt'), 'doubt.rateMinor'), ...rows } };
}

const stated = (...paths: readonly string[]): Readonly<Record<string, Origin>> => Object.fromEntries(paths.map((path) => [path, { how: 'ofEstimate' }]));

/** What a way leaves, from its money in and out. */
export const decisionStory = (title: string, { annualRatePct }: Estimate, { alternative: { words }, flows, figures: { expectedH } }: DecidedWay, output: string): FigureStory => ({
  title, operation: 'restore-decision', output, input: { options: [{ name: words, cashFlows: flows, benchHours: expectedH }], annualRatePct },
});

/** The lowest sale that does not lose. */
export const breakEvenStory = (title: string, estimate: Estimate, { alternative, costs }: DecidedWay): FigureStory => ({
  title, operation: 'break-even-sale', output: 'saleMinor', input: { ...breakEvenAsked(estimate, alternative, costs), currency: estimate.currency },
});
