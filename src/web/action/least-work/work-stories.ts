import type { KeyPlan, LeastWork, LeastWorkProblem, TouchAnalysis, WorkKey } from '#action';
import type { KeyNumber, Reading } from '#instrument';
import type { FigureStory } from '../../figure/figure-store.ts';
import { type Origins, type ReadingsAt, keyOriginsOf, readingsAt } from '../origins.ts';

/** What stands behind a plan. */
export interface BehindPlan {
  readonly problem: LeastWorkProblem;
  readonly touch: TouchAnalysis;
  /** Standing readings of the state as found. */
  readonly readings: readonly Reading[];
}

/** The minutes of the whole plan: the operation `least-work` on the whole keyboard. */
export function planStory(title: string, output: string, behind: BehindPlan): FigureStory {
  const { problem } = behind;
  const at = readingsAt(behind.readings);
  return { title, output, operation: 'least-work', input: { ...problem }, origins: { ...askedOrigins(problem), ...Object.assign({}, ...problem.keys.map((key, place) => keyOrigins(key, place, behind, at))) as Origins } };
}

/**
 * What one key comes to: the operation `least-work` on this key alone, by the set-ups the whole plan opens. Those count nothing here, for
 * other keys pay them too, and work that needs one left closed is not offered: so the key gets the work it has in the whole plan.
 */
export function keyStory(title: string, key: KeyNumber, { setups }: LeastWork, behind: BehindPlan): FigureStory | undefined {
  const { problem } = behind;
  const own = problem.keys.find((one) => one.key === key);
  if (own === undefined) return undefined;
  const isOpen = (name: string): boolean => setups.some((one) => one.name === name);
  const operations = problem.operations.filter(({ setups: needed = [] }) => needed.every(isOpen)).map(({ setups: _, ...operation }) => operation);
  const amounts = own.amounts?.filter(({ operation }) => operations.some(({ name }) => name === operation)) ?? [];
  const alone: LeastWorkProblem = { keys: [{ ...own, amounts }], operations, target: problem.target };
  return { title, output: 'keys', operation: 'least-work', input: { ...alone }, origins: { ...askedOrigins(alone), ...keyOrigins({ ...own, amounts }, 0, behind, readingsAt(behind.readings)) } };
}

/** True where the plan of a key can be opened by itself: some work can be done at it with the set-ups that are open. */
export function canOpenKey({ verdict }: KeyPlan, { setups }: LeastWork, { operations }: LeastWorkProblem): boolean {
  return verdict !== 'outOfReach' && operations.some(({ setups: needed = [] }) => needed.every((name) => setups.some((one) => one.name === name)));
}

function askedOrigins({ operations, setups = [], target }: LeastWorkProblem): Origins {
  return {
    ...Object.fromEntries(operations.map((_, place) => [`operations[${String(place)}].minutes`, { how: 'minutes' }] as const)),
    ...Object.fromEntries(operations.flatMap(({ partsMinor }, place) => (partsMinor === undefined ? [] : [[`operations[${String(place)}].partsMinor`, { how: 'prices' }] as const]))),
    ...Object.fromEntries(setups.map((_, place) => [`setups[${String(place)}].minutes`, { how: 'minutes' }] as const)),
    'target.toleranceG': { how: 'intent' },
    ...(target.minUpWeightG === undefined ? {} : { 'target.minUpWeightG': { how: 'intent' } as const }),
  };
}

function keyOrigins(key: WorkKey, place: number, { touch }: BehindPlan, at: ReadingsAt): Origins {
  const found = touch.keys.find((one) => one.key === key.key);
  const path = `keys[${String(place)}].`;
  if (found === undefined) return {};
  return {
    [`keys[${String(place)}]`]: { key: key.key },
    ...keyOriginsOf(found, { downWeightG: key.downWeightG, upWeightG: key.upWeightG }, at, path),
    ...keyOriginsOf(found, { ...key.parts }, at, `${path}parts.`),
    [`${path}targetG`]: { how: 'intent' },
    ...(key.guardG === undefined ? {} : { [`${path}guardG`]: { how: 'uncertainty' } as const }),
    ...Object.fromEntries((key.amounts ?? []).map((amount, index) => [`${path}amounts[${String(index)}].${'changeG' in amount ? 'changeG' : 'fromG' in amount ? 'fromG' : 'fromRatio'}`, { how: 'estimated' }] as const)),
  };
}
