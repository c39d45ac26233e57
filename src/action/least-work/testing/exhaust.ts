import type { LeastWorkProblem, WorkAmount, WorkKey, WorkOperation } from '../problem.ts';

/** A fine row of amounts between the ends of an operation: the ends themselves and many between. */
function rowOf(amount: WorkAmount, fine: number): readonly number[] {
  if ('changeG' in amount) return [amount.changeG];
  const [from, to] = 'fromG' in amount ? [amount.fromG, amount.toG] : [amount.fromRatio, amount.toRatio];
  const step = 'fromG' in amount ? amount.stepG : undefined;
  if (step !== undefined) return Array.from({ length: Math.floor((to - from) / step + 1e-9) + 1 }, (_, i) => from + i * step);
  return Array.from({ length: fine + 1 }, (_, i) => from + ((to - from) * i) / fine);
}

/** Whether a key with these changes keeps its limits, by `slack` more or less: straight from the words of the problem. */
export function insideWith({ target }: LeastWorkProblem, key: WorkKey, change: Readonly<Record<WorkOperation['changes'], number>>, doubt: number, slack: number): boolean {
  const { hammerWeightG: sw = 1, wippenWeightG: ww = 0, frontWeightG: fw = 0, keyRatio: k = 0 } = key.parts ?? {};
  const balance = (key.downWeightG + key.upWeightG) / 2;
  const ratio = (balance + fw - k * ww) / sw;
  const after = (ratio + change.ratio) * (sw + change.hammer) + k * ww - fw - change.front;
  const wanted = key.targetG ?? target.targetG ?? NaN;
  const room = slack - (target.guardG ?? 0);
  return [-1, 0, 1].every((side) => {
    const friction = (key.downWeightG - key.upWeightG) / 2 + change.friction + side * doubt;
    const judged = target.quantity === 'downWeight' ? after + friction : after;
    return Math.abs(judged - wanted) <= target.toleranceG + room
      && after - friction >= (key.minUpWeightG ?? target.minUpWeightG ?? -Infinity) - room
      && friction >= (key.frictionFromG ?? target.frictionFromG ?? -Infinity) - room
      && friction <= (key.frictionToG ?? target.frictionToG ?? Infinity) + room
      && (side !== 0 || friction >= -1e-9);
  });
}

interface Tried {
  readonly minutes: number;
  readonly setups: ReadonlySet<string>;
}

/** Every set of operations at a key that a fine row of amounts shows to bring it inside. */
function waysOf(problem: LeastWorkProblem, key: WorkKey, slack: number, fine: number): readonly Tried[] {
  const offered = problem.operations.flatMap((operation) => {
    const amount = key.without?.includes(operation.name) === true ? undefined : (key.amounts?.find((own) => own.operation === operation.name) ?? operation.amount);
    return amount === undefined ? [] : [{ operation, amount }];
  });
  const ways: Tried[] = [];
  for (let bits = 0; bits < 2 ** offered.length; bits += 1) {
    const set = offered.filter((_, i) => Math.floor(bits / 2 ** i) % 2 === 1);
    const groups = set.flatMap(({ operation: { group } }) => group ?? []);
    if (new Set(groups).size < groups.length) continue;
    const doubt = set.reduce((sum, { amount }) => sum + ('changeG' in amount ? (amount.uncertaintyG ?? 0) : 0), 0);
    const combinations = set.reduce<readonly Readonly<Record<WorkOperation['changes'], number>>[]>(
      (all, { operation: { changes }, amount }) => all.flatMap((sum) => rowOf(amount, fine).map((by) => ({ ...sum, [changes]: sum[changes] + by }))), [{ friction: 0, ratio: 0, hammer: 0, front: 0 }],
    );
    if (combinations.some((change) => insideWith(problem, key, change, doubt, slack))) ways.push({ minutes: set.reduce((sum, { operation }) => sum + operation.minutes, 0), setups: new Set(set.flatMap(({ operation: { setups = [] } }) => setups)) });
  }
  return ways;
}

/** Fewest minutes by trying every set of set-ups, every set of operations and a fine row of amounts; keys that nothing brings inside do not count. */
export function fewestMinutes(problem: LeastWorkProblem, slack: number, fine = 12): { readonly minutes: number; readonly unreachable: number } {
  const setups = problem.setups ?? [];
  const ways = problem.keys.map((key) => waysOf(problem, key, slack, fine));
  const reachable = ways.filter(({ length }) => length > 0);
  const totals = Array.from({ length: 2 ** setups.length }, (_, bits) => {
    const open = setups.filter((_, i) => Math.floor(bits / 2 ** i) % 2 === 1);
    const names = new Set(open.map(({ name }) => name));
    const perKey = reachable.map((tried) => Math.min(...tried.filter((way) => [...way.setups].every((name) => names.has(name))).map(({ minutes }) => minutes)));
    return open.reduce((sum, { minutes }) => sum + minutes, 0) + perKey.reduce((sum, minutes) => sum + minutes, 0);
  });
  return { minutes: Math.min(...totals), unreachable: ways.length - reachable.length };
}
