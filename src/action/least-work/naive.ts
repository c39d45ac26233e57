import { grams } from '#units';
import { type Choice, choiceOf, isInside, subsetsOf } from './choices.ts';
import type { KeyTask, Offer } from './offer.ts';
import type { NaivePlan, WorkSetup } from './problem.ts';

/**
 * The plan that replaces everything: at every key all that renews, of each group what takes longest, whether the key needs it or
 * not. Where no operation says that it renews, all that changes friction or hammer does.
 */
export function replaceAllPlan(tasks: readonly KeyTask[], setups: readonly WorkSetup[]): NaivePlan {
  const said = tasks.some(({ offers }) => offers.some(({ operation }) => operation.renews === true));
  const renews = ({ operation, changes }: Offer): boolean => (said ? operation.renews === true : changes === 'friction' || changes === 'hammer');
  return naivePlan(tasks, setups, (task) => choiceOf(task, longestOfGroups(task.offers.filter(renews))));
}

/** The plan that only leads: at every key outside, the lead work that comes nearest, of that the least; friction stays. */
export function leadOnlyPlan(tasks: readonly KeyTask[], setups: readonly WorkSetup[]): NaivePlan {
  return naivePlan(tasks, setups, (task) => {
    const untouched = choiceOf(task, []);
    return isInside(untouched) ? untouched : nearestOf(subsetsOf(task.offers.filter(({ changes }) => changes === 'front')).map((set) => choiceOf(task, set)));
  });
}

/** Of choices the one inside that takes the fewest minutes; when none is inside, the one that misses by least. */
export function nearestOf(choices: readonly Choice[]): Choice {
  const [first, ...rest] = choices;
  if (first === undefined) throw new Error('there is always the choice to do nothing');
  return rest.reduce((best, each) => {
    if (isInside(each) !== isInside(best)) return isInside(each) ? each : best;
    const byMargin = isInside(each) ? 0 : each.reached.marginG - best.reached.marginG;
    return byMargin > 0 || (byMargin === 0 && each.minutes < best.minutes) ? each : best;
  }, first);
}

function longestOfGroups(offers: readonly Offer[]): readonly Offer[] {
  return offers.filter((offer, place) => offers.every((other, at) => at === place || other.operation.group === undefined || other.operation.group !== offer.operation.group
    || other.minutes < offer.minutes || (other.minutes === offer.minutes && at > place)));
}

function naivePlan(tasks: readonly KeyTask[], setups: readonly WorkSetup[], choose: (task: KeyTask) => Choice): NaivePlan {
  const chosen = tasks.map((task) => ({ task, choice: choose(task) }));
  const bits = chosen.reduce((all, { choice }) => all | choice.setups, 0);
  const open = setups.filter((_, place) => (bits & (1 << place)) !== 0);
  const sum = (of: (choice: Choice) => number): number => chosen.reduce((total, { choice }) => total + of(choice), 0);
  const outside = chosen.filter(({ choice }) => !isInside(choice));
  return {
    minutes: sum(({ minutes }) => minutes) + open.reduce((total, { minutes }) => total + minutes, 0),
    partsMinor: sum(({ partsMinor }) => partsMinor),
    setups: open.map(({ name }) => name),
    inside: chosen.length - outside.length,
    outside: outside.map(({ task: { key }, choice: { reached: { marginG, window } } }) => ({
      key, missG: grams(-marginG), because: window.lowG > window.highG || window.frictionMarginG < 0 ? 'friction' : 'reach',
    })),
  };
}
