import { sumOf } from '#numerics';
import type { KeyTask, Offer } from './offer.ts';
import { type BalanceWindow, type ExpectedFriction, marginOf, middleOf } from './window.ts';

/** What a set of operations can make of a key, at its best. */
export interface Reached {
  readonly balanceG: number;
  readonly friction: ExpectedFriction;
  readonly window: BalanceWindow;
  /** To the nearest limit; negative outside. */
  readonly marginG: number;
  /** Change of weight that goes in steps. */
  readonly steppedG: number;
}

/** Balance weights that a set of changes of ratio, hammer and front can give: an interval for each sum of what goes in steps. */
export interface BalanceReach {
  readonly lowG: number;
  readonly highG: number;
  readonly steps: readonly SteppedSum[];
}

/**
 * The balance weight nearest to the middle of the window, within reach.
 * BW' = BW − R·SW + (R + ΔR)·(SW + ΔSW) − ΔFW. R, SW and all they become are above nought, so that BW' grows with ΔR and ΔSW
 * and falls with ΔFW, and over a box of amounts takes every value between those at two of its corners; amounts in steps are
 * gone through one by one. So the answer is exact, and outside means that no amounts would do.
 * Takes friction as it is estimated, the same at every balance weight.
 * @source OWN balance of moments as in `balanceFromPartsOf`
 */
export function reachOf({ lowG, highG, steps }: BalanceReach, friction: ExpectedFriction, window: BalanceWindow): Reached {
  const middle = middleOf(window);
  let [balanceG, steppedG] = [NaN, 0];
  for (const { sum } of steps) {
    const here = Math.min(Math.max(middle, lowG - sum), highG - sum);
    const [off, best] = [Math.abs(here - middle), Math.abs(balanceG - middle)];
    if (Number.isNaN(balanceG) || off < best || (off === best && Math.abs(sum) < Math.abs(steppedG))) [balanceG, steppedG] = [here, sum];
  }
  return { balanceG, friction, window, marginG: marginOf(window, balanceG), steppedG };
}

/** Friction after a set of operations that change it. */
export function frictionAfter({ frictionG }: KeyTask, rubbing: readonly Offer[]): ExpectedFriction {
  return { frictionG: frictionG + sumOf(rubbing.map(({ from }) => from)), doubtG: sumOf(rubbing.map(({ doubtG }) => doubtG)) };
}

/** Balance weights that a set of operations on ratio, hammer and front can give. */
export function balanceReachOf({ balanceG, parts }: KeyTask, weighing: readonly Offer[]): BalanceReach {
  const ends = { ratio: [0, 0], hammer: [0, 0], front: [0, 0], friction: [0, 0] } satisfies Record<Offer['changes'], [number, number]>;
  for (const { changes, from, to, steps } of weighing) {
    if (steps.length > 0) continue;
    ends[changes][0] += from;
    ends[changes][1] += to;
  }
  const { ratio, hammerG } = parts ?? { ratio: 0, hammerG: 0 };
  const product = (side: 0 | 1): number => (ratio + ends.ratio[side]) * (hammerG + ends.hammer[side]) - ratio * hammerG;
  return { lowG: balanceG + product(0) - ends.front[1], highG: balanceG + product(1) - ends.front[0], steps: steppedSumsOf(weighing) };
}

/** A sum of amounts in steps, and the amount of each operation in it, in the order they were chosen. */
export interface SteppedSum {
  readonly sum: number;
  readonly amounts: readonly number[];
}

const NO_STEPS: readonly SteppedSum[] = [{ sum: 0, amounts: [] }];

/** Every sum that the operations in steps can come to. */
export function steppedSumsOf(chosen: readonly Offer[]): readonly SteppedSum[] {
  return chosen.filter(({ steps }) => steps.length > 0).reduce<readonly SteppedSum[]>(
    (sums, { steps }) => sums.flatMap(({ sum, amounts }) => steps.map((amount) => ({ sum: sum + amount, amounts: [...amounts, amount] }))), NO_STEPS,
  );
}
