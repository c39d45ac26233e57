import { type DecidedWay, breakEvenAsked, hoursAsked } from '#estimate';
import type { Estimate } from '#workshop';
import type { FigureStory } from '../figure/figure-store.ts';

/** How the hours of a way were drawn; nothing where it holds no work. */
export function hoursStory(title: string, estimate: Estimate, { alternative }: DecidedWay, output: string): FigureStory | undefined {
  const asked = hoursAsked(estimate, alternative);
  return asked === undefined ? undefined : { title, operation: 'three-point-hours', input: { ...asked }, output };
}

/** What a way leaves, from its money in and out. */
export const decisionStory = (title: string, { annualRatePct }: Estimate, { alternative: { words }, flows, figures: { expectedH } }: DecidedWay, output: string): FigureStory => ({
  title, operation: 'restore-decision', output, input: { options: [{ name: words, cashFlows: flows, benchHours: expectedH }], annualRatePct },
});

/** The lowest sale that does not lose. */
export const breakEvenStory = (title: string, estimate: Estimate, { alternative, costs }: DecidedWay): FigureStory => ({
  title, operation: 'break-even-sale', output: 'saleMinor', input: { ...breakEvenAsked(estimate, alternative, costs), currency: estimate.currency },
});
