import { solveProgram, sumText } from '../../testing/solver.ts';
import type { LeastWorkProblem, WorkAmount, WorkKey, WorkOperation } from '../problem.ts';

type Term = readonly [weight: number, variable: string];

/**
 * Fewest minutes by a general solver of mixed-integer programs: a binary for each operation at each key and for each set-up, an
 * amount for each operation. Linear only while at no key a ratio and a hammer change together: their operations must be of one group.
 * @returns `undefined` when some key cannot be brought inside.
 */
export async function minutesByMilp(problem: LeastWorkProblem): Promise<number | undefined> {
  const setups = problem.setups ?? [];
  const offers = problem.keys.flatMap((key, k) => problem.operations.flatMap((operation, o) => {
    const amount = key.without?.includes(operation.name) === true ? undefined : (key.amounts?.find((own) => own.operation === operation.name) ?? operation.amount);
    return amount === undefined ? [] : [{ k, key, operation, amount, done: `y${String(k)}_${String(o)}`, by: `x${String(k)}_${String(o)}` }];
  }));
  const minutes: readonly Term[] = [...offers.map(({ operation, done }): Term => [operation.minutes, done]), ...setups.map((setup, s): Term => [setup.minutes, `u${String(s)}`])];
  const ends = offers.flatMap(({ amount, done, by }, i) => {
    const [from, to] = endsOf(amount);
    return [` f${String(i)}: ${sumText([[1, by], [-from, done]])} >= 0`, ` t${String(i)}: ${sumText([[1, by], [-to, done]])} <= 0`];
  });
  const needs = offers.flatMap(({ operation, done }, i) => (operation.setups ?? []).map((name, n) => ` n${String(i)}_${String(n)}: ${sumText([[1, done], [-1, `u${String(setups.findIndex((setup) => setup.name === name))}`]])} <= 0`));
  const groups = problem.keys.flatMap((_, k) => [...new Set(problem.operations.flatMap(({ group }) => group ?? []))].flatMap((group, g) => {
    const rivals = offers.filter((offer) => offer.k === k && offer.operation.group === group);
    return rivals.length < 2 ? [] : [` g${String(k)}_${String(g)}: ${sumText(rivals.map(({ done }) => [1, done]))} <= 1`];
  }));
  const limits = problem.keys.flatMap((key, k) => limitsOf(problem, key, k, offers.filter((offer) => offer.k === k)));
  const free = offers.map(({ by }) => ` -100 <= ${by} <= 100`);
  const valueOf = await solveProgram([
    'Minimize', ` obj: ${sumText(minutes)}`, 'Subject To', ...ends, ...needs, ...groups, ...limits, 'Bounds', ...free,
    'Binary', ` ${[...offers.map(({ done }) => done), ...setups.map((_, s) => `u${String(s)}`)].join(' ')}`, 'End',
  ]);
  return valueOf === undefined ? undefined : minutes.reduce((sum, [weight, variable]) => sum + weight * Math.round(valueOf(variable)), 0);
}

interface Offered {
  readonly operation: WorkOperation;
  readonly amount: WorkAmount;
  readonly done: string;
  readonly by: string;
}

const endsOf = (amount: WorkAmount): readonly [number, number] => ('changeG' in amount ? [amount.changeG, amount.changeG] : 'fromG' in amount ? [amount.fromG, amount.toG] : [amount.fromRatio, amount.toRatio]);

function limitsOf({ target }: LeastWorkProblem, key: WorkKey, k: number, offers: readonly Offered[]): readonly string[] {
  const { hammerWeightG: sw = 1, wippenWeightG: ww = 0, frontWeightG: fw = 0, keyRatio = 0 } = key.parts ?? {};
  const [balance, friction] = [(key.downWeightG + key.upWeightG) / 2, (key.downWeightG - key.upWeightG) / 2];
  const ratio = (balance + fw - keyRatio * ww) / sw;
  const ofBalance = { friction: 0, ratio: sw, hammer: ratio, front: -1 };
  const row = (onBalance: number, onFriction: number, onDoubt: number): string => sumText(offers.flatMap(({ operation: { changes }, amount, done, by }): readonly Term[] => {
    const weight = changes === 'friction' ? onFriction : onBalance * ofBalance[changes];
    const doubt = 'changeG' in amount ? (amount.uncertaintyG ?? 0) : 0;
    return [[weight, by], [onDoubt * doubt, done]];
  }));
  const guard = target.guardG ?? 0;
  const wanted = key.targetG ?? target.targetG ?? NaN;
  const shift = target.quantity === 'downWeight' ? 1 : 0;
  const found = balance + shift * friction;
  const lines: readonly (readonly [string, number | undefined])[] = [
    [`${row(1, shift, shift)} <=`, wanted + target.toleranceG - guard - found],
    [`${row(1, shift, -shift)} >=`, wanted - target.toleranceG + guard - found],
    [`${row(1, -1, -1)} >=`, target.minUpWeightG === undefined ? undefined : target.minUpWeightG + guard - (balance - friction)],
    [`${row(0, 1, -1)} >=`, target.frictionFromG === undefined ? undefined : target.frictionFromG + guard - friction],
    [`${row(0, 1, 1)} <=`, target.frictionToG === undefined ? undefined : target.frictionToG - guard - friction],
    [`${row(0, 1, 0)} >=`, 0 - friction],
  ];
  return lines.flatMap(([text, bound], i) => (bound === undefined || text.length < 4 ? [] : [` l${String(k)}_${String(i)}: ${text} ${String(bound)}`]));
}
