import { type Result, ok, refuse } from '#result';
import { workIssues } from './check.ts';
import { type Choice, bestBySetups, choiceOf, choicesOf, isInside } from './choices.ts';
import { keyPlanOf } from './key-plan.ts';
import { leadOnlyPlan, replaceAllPlan } from './naive.ts';
import { type KeyTask, tasksOf } from './offer.ts';
import type { KeyPlan, LeastWork, LeastWorkProblem, WorkSetup } from './problem.ts';
import { changeKinds } from './problem.ts';

/**
 * The work that brings every key inside its limits in the fewest minutes, proven for the model.
 * min Σ minutes of the operations + Σ minutes of the set-ups they need, over which operations are done at which key and by what
 * amount, with BW' = (R + ΔR)·(SW + ΔSW) + K·WW − FW − ΔFW − S, DW' = BW' + F', UW' = BW' − F', F' = F + Σ ΔF inside all limits.
 * Every set of operations at every key is tried exactly (`reachOf`), every set of open set-ups too, and once the set-ups are
 * open each key stands alone: nothing is left out, so that the minutes are their own lower bound. Equal minutes: fewer parts,
 * then the wider margin. Keys that no offered work brings inside are told apart, and get none.
 * The model takes effects as they are estimated and each by itself: friction does not follow the load, a moved capstan does
 * not change the key ratio, minutes do not depend on the amount.
 * @source OWN
 */
export function leastWork(problem: LeastWorkProblem): Result<LeastWork> {
  const issues = workIssues(problem);
  return issues.length > 0 ? refuse(...issues) : ok(solve(problem));
}

function solve(problem: LeastWorkProblem): LeastWork {
  const setups = problem.setups ?? [];
  const tasks = tasksOf(problem);
  const tried = tasks.map(triedAt);
  const best = tried.map((choices) => bestBySetups(choices, setups.length));
  const open = cheapestSetups(best, setups);
  const keys = tasks.map((task, place) => keyPlanOf(task, best[place]?.[open.bits], tried[place] ?? []));
  return {
    minutes: open.minutes, lowerBoundMinutes: open.minutes, proven: true,
    partsMinor: keys.reduce((sum, { partsMinor }) => sum + partsMinor, 0),
    setups: setups.filter((_, place) => (open.bits & (1 << place)) !== 0).map(({ name, minutes }) => ({ name, minutes, keys: keysUsing(name, keys, problem) })),
    stages: stagesOf(keys, problem),
    keys,
    already: keys.filter(({ verdict }) => verdict === 'already').length,
    planned: keys.filter(({ verdict }) => verdict === 'planned').length,
    outOfReach: keys.flatMap(({ verdict, key }) => (verdict === 'outOfReach' ? [key] : [])),
    replaceAll: replaceAllPlan(tasks, setups),
    leadOnly: leadOnlyPlan(tasks, setups),
  };
}

/** All that may be done at a key and changes anything; nothing else where it is inside as found, since no work takes less than none. */
function triedAt(task: KeyTask): readonly Choice[] {
  const untouched = choiceOf(task, []);
  if (isInside(untouched)) return [untouched];
  return choicesOf({ ...task, offers: task.offers.filter(({ from, to }) => from !== 0 || to !== 0) });
}

interface OpenSetups {
  readonly bits: number;
  readonly minutes: number;
  readonly partsMinor: number;
}

/** The set-ups to open: of all sets of them the one with the fewest minutes in all, then the fewest parts, then the fewest set-ups. A set that shuts out a key which others let in does not count. */
function cheapestSetups(best: readonly (readonly (Choice | undefined)[])[], setups: readonly WorkSetup[]): OpenSetups {
  const reachable = best.filter((row) => row.at(-1) !== undefined);
  const totals = Array.from({ length: 1 << setups.length }, (_, bits): OpenSetups => ({
    bits,
    minutes: reachable.reduce((sum, row) => sum + (row[bits]?.minutes ?? Infinity), 0) + setups.reduce((sum, { minutes }, place) => sum + ((bits & (1 << place)) === 0 ? 0 : minutes), 0),
    partsMinor: reachable.reduce((sum, row) => sum + (row[bits]?.partsMinor ?? 0), 0),
  }));
  return totals.reduce((standing, each) => (compareSetups(each, standing) < 0 ? each : standing));
}

const countOf = (bits: number): number => bits.toString(2).replaceAll('0', '').length;

function compareSetups(a: OpenSetups, b: OpenSetups): number {
  if (a.minutes === Infinity || b.minutes === Infinity) return a.minutes === b.minutes ? 0 : a.minutes - b.minutes;
  if (Math.abs(a.minutes - b.minutes) > 1e-9) return a.minutes - b.minutes;
  return a.partsMinor - b.partsMinor || countOf(a.bits) - countOf(b.bits);
}

function keysUsing(setup: string, keys: readonly KeyPlan[], { operations }: LeastWorkProblem): readonly KeyPlan['key'][] {
  const users = new Set(operations.filter(({ setups = [] }) => setups.includes(setup)).map(({ name }) => name));
  return keys.filter(({ work }) => work.some(({ operation }) => users.has(operation))).map(({ key }) => key);
}

function stagesOf(keys: readonly KeyPlan[], { operations }: LeastWorkProblem): LeastWork['stages'] {
  return changeKinds.flatMap((changes) => {
    const rows = operations.filter((operation) => operation.changes === changes).flatMap(({ name }) => {
      const done = keys.flatMap(({ key, work }) => work.filter(({ operation }) => operation === name).map((one) => ({ key, ...one })));
      return done.length === 0 ? [] : [{ operation: name, keys: done.map(({ key }) => key), minutes: total(done, 'minutes'), partsMinor: total(done, 'partsMinor') }];
    });
    return rows.length === 0 ? [] : [{ changes, minutes: total(rows, 'minutes'), partsMinor: total(rows, 'partsMinor'), operations: rows }];
  });
}

const total = <Name extends string>(rows: readonly Readonly<Record<Name, number>>[], name: Name): number => rows.reduce((sum, row) => sum + row[name], 0);
