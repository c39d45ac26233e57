import type { Trial } from '../trial.ts';

/** A plan kept to be compared, not written. */
export interface KeptPlan {
  readonly letter: 'A' | 'B';
  readonly sizes: Trial;
}

export type KeptPlans = readonly KeptPlan[];
export const NO_PLANS: KeptPlans = [];

/** The plans with one more, under the letter that is free; unchanged where none is. */
export function withPlan(plans: KeptPlans, sizes: Trial): KeptPlans {
  const letter = (['A', 'B'] as const).find((one) => plans.every((plan) => plan.letter !== one));
  return letter === undefined ? plans : [...plans, { letter, sizes }].toSorted((a, b) => a.letter.localeCompare(b.letter));
}
