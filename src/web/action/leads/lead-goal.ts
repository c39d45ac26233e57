import { grams } from '#units';
import type { LeadedKey } from '#workshop';
import type { LeadJob } from './leads-jobs.ts';

/** What goes first: what is stated of new holes, old holes first where nothing is, or inertia alone. */
export type LeadGoal = 'stated' | 'inertia';

/** The keys as they are asked for a goal: for inertia alone no work counts. */
export function questionedAs(goal: LeadGoal, keys: readonly LeadedKey[]): readonly LeadedKey[] {
  return goal === 'stated' ? keys : keys.map((leaded) => ({ ...leaded, question: { ...leaded.question, newHoleCostG: grams(0), leadCostG: grams(0), plugCostG: grams(0), trimCostG: grams(0) } }));
}

/** What the worker is given. */
export function jobsOf(keys: readonly LeadedKey[]): readonly LeadJob[] {
  return keys.map(({ question, above }) => ({ question, above }));
}
