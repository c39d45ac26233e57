import { grams } from '#units';
import { amountsOf, stateAfter, workOf } from './amounts.ts';
import { type Choice, choiceOf, isInside } from './choices.ts';
import { nearestOf } from './naive.ts';
import type { KeyTask } from './offer.ts';
import type { KeyPlan } from './problem.ts';
import { singleChangesOf } from './single-change.ts';

/** The plan of a key from the best choice there is for it; without one, from what comes nearest of all that was tried. */
export function keyPlanOf(task: KeyTask, best: Choice | undefined, tried: readonly Choice[]): KeyPlan {
  if (best === undefined) return outOfReachPlan(task, nearestOf(tried));
  const amounts = amountsOf(task, best);
  return {
    key: task.key, verdict: best.chosen.length === 0 ? 'already' : 'planned', work: workOf(amounts),
    minutes: best.minutes, partsMinor: best.partsMinor, after: stateAfter(task, amounts), marginG: grams(best.reached.marginG),
  };
}

function outOfReachPlan(task: KeyTask, nearest: Choice): KeyPlan {
  const untouched = choiceOf(task, []);
  const asFound = stateAfter(task, new Map());
  const amounts = amountsOf(task, nearest);
  const after = stateAfter(task, amounts);
  const wouldReach = singleChangesOf(task, { ...asFound, doubtG: 0 }, { ...after, doubtG: nearest.reached.friction.doubtG });
  return {
    key: task.key, verdict: 'outOfReach', work: [], minutes: 0, partsMinor: 0, after: asFound, marginG: grams(untouched.reached.marginG),
    outOfReach: { missG: grams(isInside(nearest) ? 0 : -nearest.reached.marginG), nearest: workOf(amounts), after, wouldReach },
  };
}
