import type { Issue } from '#result';
import { balanceWeightOf } from '../balance.ts';
import { weightRatioOf } from '../parts.ts';
import { amountIssues } from './check-amount.ts';
import { unknownIssues } from './check-name.ts';
import { amountOf, stepCountOf } from './offer.ts';
import type { ChangeKind, LeastWorkProblem, WorkKey, WorkOperation, WorkTarget } from './problem.ts';

/** At one key every set of the operations offered is tried; as many as of this many operations are quick, and more operations where groups allow one of several. */
export const MOST_OFFERS = 12;
/** Every combination of amounts in steps at one key is tried as well. */
export const MOST_STEP_COMBINATIONS = 10_000;

/** What is wrong with one key: its weights, its names and amounts, its parts, its limits. */
export function keyIssues(problem: LeastWorkProblem, key: WorkKey, path: string): readonly Issue[] {
  const own = [...weightIssues(key, path), ...nameIssues(problem, key, path), ...limitIssues(problem, key, path)];
  return own.length > 0 ? own : [...offerIssues(problem, key, path), ...partIssues(problem, key, path)];
}

function weightIssues({ downWeightG, upWeightG }: WorkKey, path: string): readonly Issue[] {
  if (upWeightG <= downWeightG) return [];
  return [{ code: 'order', path: `${path}.upWeightG`, given: upWeightG, allowed: `at most the down weight, ${String(downWeightG)}`, params: { reason: 'upAboveDown', max: downWeightG } }];
}

function nameIssues({ operations }: LeastWorkProblem, { amounts = [], without = [] }: WorkKey, path: string): readonly Issue[] {
  const known = operations.map(({ name }) => name);
  const own = amounts.flatMap((amount, at) => {
    const here = `${path}.amounts[${String(at)}]`;
    const before = amounts.findIndex(({ operation }) => operation === amount.operation);
    const twice: readonly Issue[] = before === at ? [] : [{ code: 'duplicate', path: `${here}.operation`, given: amount.operation, allowed: `each once; amounts[${String(before)}] is ${amount.operation} already`, params: { first: before } }];
    const operation = operations.find(({ name }) => name === amount.operation);
    return [...twice, ...unknownIssues(`${here}.operation`, amount.operation, known), ...(operation === undefined ? [] : amountIssues(here, amount, operation.changes))];
  });
  return [...own, ...without.flatMap((name, at) => unknownIssues(`${path}.without[${String(at)}]`, name, known))];
}

function limitIssues({ target }: LeastWorkProblem, key: WorkKey, path: string): readonly Issue[] {
  const none: readonly Issue[] = (key.targetG ?? target.targetG) === undefined ? [{ code: 'required', path: `${path}.targetG`, given: undefined, allowed: 'a target here or in target.targetG', params: { reason: 'workTarget' } }] : [];
  const [from, to] = [key.frictionFromG ?? target.frictionFromG ?? -Infinity, key.frictionToG ?? target.frictionToG ?? Infinity];
  const least = from + 2 * (key.guardG ?? target.guardG ?? 0);
  const turned: readonly Issue[] = to >= least ? [] : [{ code: 'order', path: key.frictionToG === undefined ? 'target.frictionToG' : `${path}.frictionToG`, given: to, allowed: `at least ${String(least)}, the least friction with the guard at both ends`, params: { min: least } }];
  return [...none, ...turned, ...guardIssues(`${path}.guardG`, key.guardG, target)];
}

function offerIssues({ operations }: LeastWorkProblem, key: WorkKey, path: string): readonly Issue[] {
  const offered = operations.flatMap((operation) => amountOf(operation, key) ?? []);
  const steps = offered.reduce((product, amount) => product * ('fromG' in amount ? stepCountOf(amount) : 1), 1);
  const many: readonly Issue[] = setCountOf(operations.filter((operation) => amountOf(operation, key) !== undefined)) <= 2 ** MOST_OFFERS ? [] : [{ code: 'length', path, given: offered.length, allowed: `at most ${String(MOST_OFFERS)} operations at one key; name the others in without`, params: { max: MOST_OFFERS, of: 'array' } }];
  const fine: readonly Issue[] = steps <= MOST_STEP_COMBINATIONS ? [] : [{ code: 'length', path, given: steps, allowed: `at most ${String(MOST_STEP_COMBINATIONS)} combinations of steps at one key; take coarser steps or none`, params: { max: MOST_STEP_COMBINATIONS, of: 'array' } }];
  return [...many, ...fine];
}

/** Sets of operations there are, with one of each group at most. */
function setCountOf(offered: readonly WorkOperation[]): number {
  const groups = new Map<string, number>();
  for (const { group, name } of offered) groups.set(group ?? `alone ${name}`, (groups.get(group ?? `alone ${name}`) ?? 0) + 1);
  return [...groups.values()].reduce((product, count) => product * (count + 1), 1);
}

/** Hammer and ratio must be known where they may change, and stay above nought whatever is done. */
function partIssues(problem: LeastWorkProblem, key: WorkKey, path: string): readonly Issue[] {
  const lowest = (kind: ChangeKind): number | undefined => lowestOf(problem, key, kind);
  const [hammer, ratio] = [lowest('hammer'), lowest('ratio')];
  const { parts } = key;
  if (parts === undefined) {
    const needed = hammer !== undefined || ratio !== undefined;
    return needed ? [{ code: 'required', path: `${path}.parts`, given: undefined, allowed: 'the weights of the parts, since hammer or ratio may change here', params: { reason: 'workParts' } }] : [];
  }
  const found = weightRatioOf({ ...parts, balanceWeightG: balanceWeightOf(key) });
  if (found <= 0) return [{ code: 'conflict', path: `${path}.parts`, given: found, allowed: 'parts that leave the hammer a ratio above 0: with these weights it would be as given', params: { reason: 'ratioNought' } }];
  return [...positiveIssues(`${path}.parts.hammerWeightG`, parts.hammerWeightG, hammer), ...positiveIssues(`${path}.parts`, found, ratio)];
}

/** Sum of the lowest ends of the operations of a kind offered at a key; none where none is offered. */
function lowestOf({ operations }: LeastWorkProblem, key: WorkKey, kind: ChangeKind): number | undefined {
  const ends = operations.flatMap((operation) => {
    const amount = operation.changes === kind ? amountOf(operation, key) : undefined;
    return amount === undefined || 'changeG' in amount ? [] : [Math.min(0, 'fromG' in amount ? amount.fromG : amount.fromRatio)];
  });
  return ends.length === 0 ? undefined : ends.reduce((sum, end) => sum + end, 0);
}

function positiveIssues(path: string, given: number, change: number | undefined): readonly Issue[] {
  if (change === undefined || given + change > 0) return [];
  return [{ code: 'range', path, given, allowed: `more than ${String(-change)}, which the operations may take off together`, params: { above: -change } }];
}

/** A guard as wide as the tolerance leaves no room for a key. */
export function guardIssues(path: string, guardG: number | undefined, { toleranceG }: Pick<WorkTarget, 'toleranceG'>): readonly Issue[] {
  if (guardG === undefined || guardG === 0 || guardG < toleranceG) return [];
  return [{ code: 'order', path, given: guardG, allowed: `less than the tolerance, ${String(toleranceG)}`, params: { below: toleranceG } }];
}
