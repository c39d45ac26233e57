import type { Issue } from '#result';
import { amountIssues } from './check-amount.ts';
import { guardIssues, keyIssues } from './check-key.ts';
import { duplicateIssues, unknownIssues } from './check-name.ts';
import type { LeastWorkProblem } from './problem.ts';

/** Set-ups are tried in every combination; this many are quick. */
export const MOST_SETUPS = 8;

/** Everything that is wrong with a problem beyond its single fields: names twice or unknown, amounts of the wrong kind, parts that contradict the weights, limits that leave nothing. */
export function workIssues(problem: LeastWorkProblem): readonly Issue[] {
  const { keys, operations, setups = [], target } = problem;
  const named = [...duplicateIssues('operations', 'name', operations.map(({ name }) => name)), ...duplicateIssues('setups', 'name', setups.map(({ name }) => name)), ...duplicateIssues('keys', 'key', keys.map(({ key }) => key))];
  const known = setups.map(({ name }) => name);
  const unknown = problem.setups === undefined ? unstatedIssues(problem) : operations.flatMap(({ setups: needed = [] }, place) => needed.flatMap((name, at) => unknownIssues(`operations[${String(place)}].setups[${String(at)}]`, name, known)));
  const amounts = operations.flatMap(({ amount, changes }, place) => (amount === undefined ? [] : amountIssues(`operations[${String(place)}].amount`, amount, changes)));
  const many: readonly Issue[] = setups.length <= MOST_SETUPS ? [] : [{ code: 'length', path: 'setups', given: setups.length, allowed: `at most ${String(MOST_SETUPS)} set-ups`, params: { max: MOST_SETUPS, of: 'array' } }];
  const own = [...named, ...many, ...unknown, ...amounts, ...guardIssues('target.guardG', target.guardG, target)];
  return [...own, ...keys.flatMap((key, place) => keyIssues(problem, key, `keys[${String(place)}]`))];
}

/** Operations that need set-ups where none are stated at all. */
function unstatedIssues({ operations }: LeastWorkProblem): readonly Issue[] {
  const needed = [...new Set(operations.flatMap(({ setups = [] }) => setups))].join(', ');
  return needed === '' ? [] : [{ code: 'required', path: 'setups', given: undefined, allowed: `the set-ups that operations need, with their minutes: ${needed}` }];
}
