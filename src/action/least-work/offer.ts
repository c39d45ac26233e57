import type { KeyNumber } from '#instrument';
import { balanceWeightOf, frictionOf } from '../balance.ts';
import { weightRatioOf } from '../parts.ts';
import type { ChangeKind, LeastWorkProblem, WeightAmount, WorkAmount, WorkKey, WorkOperation } from './problem.ts';
import type { TouchLimits } from './window.ts';

/** One operation as it is offered at one key; grams and pure numbers. */
export interface Offer {
  readonly operation: WorkOperation;
  readonly minutes: number;
  readonly partsMinor: number;
  /** One bit for each set-up it needs. */
  readonly setups: number;
  readonly changes: ChangeKind;
  /** Ends of what it changes; equal for friction. */
  readonly from: number;
  readonly to: number;
  /** Amounts it goes in; none where any amount between the ends will do. */
  readonly steps: readonly number[];
  /** How far its effect may be off. */
  readonly doubtG: number;
}

/** One key as the search sees it. */
export interface KeyTask {
  readonly key: KeyNumber;
  readonly balanceG: number;
  readonly frictionG: number;
  /** R, SW and FW; absent where the parts are not known: then neither hammer nor ratio is offered. */
  readonly parts: { readonly ratio: number; readonly hammerG: number; readonly frontG: number } | undefined;
  readonly limits: TouchLimits;
  readonly offers: readonly Offer[];
}

/** What is to be done at each key, and what may be. Takes a problem that `workIssues` finds nothing wrong with. */
export function tasksOf(problem: LeastWorkProblem): readonly KeyTask[] {
  const places = new Map((problem.setups ?? []).map(({ name }, place) => [name, place]));
  return problem.keys.map((key) => ({
    key: key.key,
    balanceG: balanceWeightOf(key),
    frictionG: frictionOf(key),
    parts: partsOf(key),
    limits: limitsOf(problem, key),
    offers: problem.operations.flatMap((operation) => {
      const amount = amountOf(operation, key);
      return amount === undefined ? [] : [offerOf(operation, amount, places)];
    }),
  }));
}

/** The amount of an operation at a key: the key's own, else that of the operation; none where the key goes without. */
export function amountOf({ name, amount }: WorkOperation, { amounts = [], without = [] }: WorkKey): WorkAmount | undefined {
  return without.includes(name) ? undefined : (amounts.find(({ operation }) => operation === name) ?? amount);
}

/** R by weights, SW and FW of a key whose parts are known. */
function partsOf({ parts, ...key }: WorkKey): KeyTask['parts'] {
  if (parts === undefined) return undefined;
  return { ratio: weightRatioOf({ ...parts, balanceWeightG: balanceWeightOf(key) }), hammerG: parts.hammerWeightG, frontG: parts.frontWeightG };
}

function limitsOf({ target }: LeastWorkProblem, key: WorkKey): TouchLimits {
  const guard = key.guardG ?? target.guardG ?? 0;
  const wanted = key.targetG ?? target.targetG ?? 0;
  return {
    quantity: target.quantity,
    lowG: wanted - target.toleranceG + guard,
    highG: wanted + target.toleranceG - guard,
    minUpWeightG: (key.minUpWeightG ?? target.minUpWeightG ?? -Infinity) + guard,
    frictionFromG: (key.frictionFromG ?? target.frictionFromG ?? -Infinity) + guard,
    frictionToG: (key.frictionToG ?? target.frictionToG ?? Infinity) - guard,
  };
}

function offerOf(operation: WorkOperation, amount: WorkAmount, places: ReadonlyMap<string, number>): Offer {
  const setups = (operation.setups ?? []).reduce((bits, name) => bits | (1 << (places.get(name) ?? 0)), 0);
  return { operation, minutes: operation.minutes, partsMinor: operation.partsMinor ?? 0, setups, changes: operation.changes, ...endsOf(amount) };
}

function endsOf(amount: WorkAmount): Pick<Offer, 'from' | 'to' | 'steps' | 'doubtG'> {
  if ('changeG' in amount) return { from: amount.changeG, to: amount.changeG, steps: [], doubtG: amount.uncertaintyG ?? 0 };
  if ('fromRatio' in amount) return { from: amount.fromRatio, to: amount.toRatio, steps: [], doubtG: 0 };
  const { fromG: from, toG: to, stepG } = amount;
  return { from, to, steps: stepG === undefined ? [] : Array.from({ length: stepCountOf(amount) }, (_, place) => from + place * stepG), doubtG: 0 };
}

/** How many amounts a change of weight in steps has; 1 where it goes in none. */
export function stepCountOf({ fromG, toG, stepG }: WeightAmount): number {
  return stepG === undefined ? 1 : Math.floor((toG - fromG) / stepG + 1e-9) + 1;
}
