import type { Issue } from '#result';
import { stepCountOf } from './offer.ts';
import type { ChangeKind, WeightAmount, WorkAmount } from './problem.ts';

/** More steps than this are no longer steps: leave the step out. */
export const MOST_STEPS = 400;

/** What is wrong with one amount: of another kind than its operation, ends the wrong way round, too many steps. */
export function amountIssues(path: string, amount: WorkAmount, changes: ChangeKind): readonly Issue[] {
  const kind = 'changeG' in amount ? 'changeG' : 'fromG' in amount ? 'fromG' : 'fromRatio';
  const wanted = changes === 'friction' ? 'changeG' : changes === 'ratio' ? 'fromRatio' : 'fromG';
  if (kind !== wanted) return [{ code: 'conflict', path, given: amount, allowed: `${FIELDS[wanted]}, since the operation changes ${changes}`, params: { reason: 'amountKind', fields: FIELDS[wanted] } }];
  if ('fromG' in amount) return [...orderIssues(`${path}.toG`, amount.fromG, amount.toG), ...stepIssues(path, amount)];
  return 'fromRatio' in amount ? orderIssues(`${path}.toRatio`, amount.fromRatio, amount.toRatio) : [];
}

const FIELDS = { changeG: 'changeG, uncertaintyG', fromG: 'fromG, toG, stepG', fromRatio: 'fromRatio, toRatio' } as const;

function orderIssues(path: string, from: number, to: number): readonly Issue[] {
  return from <= to ? [] : [{ code: 'order', path, given: to, allowed: `at least ${String(from)}, where it begins`, params: { min: from } }];
}

function stepIssues(path: string, amount: WeightAmount): readonly Issue[] {
  if (stepCountOf(amount) <= MOST_STEPS) return [];
  const least = (amount.toG - amount.fromG) / (MOST_STEPS - 1);
  return [{ code: 'range', path: `${path}.stepG`, given: amount.stepG, allowed: `at least ${String(least)}, or none for any amount`, params: { min: least } }];
}
