import type { KeyTask, Offer } from './offer.ts';
import { type BalanceReach, type Reached, balanceReachOf, frictionAfter, reachOf } from './reach.ts';
import { type BalanceWindow, type ExpectedFriction, TOUCHING_G, balanceWindowOf } from './window.ts';

/** A set of operations at one key, and what it can make of the key. */
export interface Choice {
  readonly chosen: readonly Offer[];
  readonly minutes: number;
  readonly partsMinor: number;
  /** Set-ups that all of it together needs. */
  readonly setups: number;
  readonly reached: Reached;
}

/** Every set of the operations offered at a key, one of each group at most; the empty set first. */
export function subsetsOf(offers: readonly Offer[]): readonly (readonly Offer[])[] {
  return offers.reduce<readonly (readonly Offer[])[]>((sets, offer) => [...sets, ...sets.filter((set) => !set.some((other) => rivals(other, offer))).map((set) => [...set, offer])], [[]]);
}

const rivals = (one: Offer, other: Offer): boolean => one.operation.group !== undefined && one.operation.group === other.operation.group;

/**
 * Every set of the operations offered at a key, with what it takes and gives.
 * Friction alone shapes the window, all else alone the reach: each half is worked out once and every pair of halves is joined.
 */
export function choicesOf(task: KeyTask): readonly Choice[] {
  const [rubbing, weighing] = halvesOf(task.offers);
  const reaches = subsetsOf(weighing).map((set) => reachHalfOf(task, set));
  return subsetsOf(rubbing).flatMap((set) => {
    const half = windowHalfOf(task, set);
    return reaches.filter(({ chosen }) => !set.some((one) => chosen.some((other) => rivals(one, other)))).map((reach) => joined(half, reach));
  });
}

/** One set of operations at a key, with what it takes and gives. */
export function choiceOf(task: KeyTask, chosen: readonly Offer[]): Choice {
  const [rubbing, weighing] = halvesOf(chosen);
  return joined(windowHalfOf(task, rubbing), reachHalfOf(task, weighing));
}

type Half = Omit<Choice, 'reached'>;
type WindowHalf = Half & { readonly friction: ExpectedFriction; readonly window: BalanceWindow };
type ReachHalf = Half & { readonly reach: BalanceReach };

function halvesOf(offers: readonly Offer[]): readonly [readonly Offer[], readonly Offer[]] {
  return [offers.filter(({ changes }) => changes === 'friction'), offers.filter(({ changes }) => changes !== 'friction')];
}

function windowHalfOf(task: KeyTask, chosen: readonly Offer[]): WindowHalf {
  const friction = frictionAfter(task, chosen);
  return { ...takenBy(chosen), friction, window: balanceWindowOf(task.limits, friction) };
}

function reachHalfOf(task: KeyTask, chosen: readonly Offer[]): ReachHalf {
  return { ...takenBy(chosen), reach: balanceReachOf(task, chosen) };
}

function takenBy(chosen: readonly Offer[]): Half {
  return {
    chosen,
    minutes: chosen.reduce((sum, { minutes }) => sum + minutes, 0),
    partsMinor: chosen.reduce((sum, { partsMinor }) => sum + partsMinor, 0),
    setups: chosen.reduce((bits, { setups }) => bits | setups, 0),
  };
}

function joined(a: WindowHalf, b: ReachHalf): Choice {
  return { chosen: [...a.chosen, ...b.chosen], minutes: a.minutes + b.minutes, partsMinor: a.partsMinor + b.partsMinor, setups: a.setups | b.setups, reached: reachOf(b.reach, a.friction, a.window) };
}

/** Whether a set of operations brings its key inside all limits. */
export function isInside({ reached }: Choice): boolean {
  return reached.marginG >= -TOUCHING_G;
}

/** Minutes apart by less than this are the same. */
const SAME_MINUTES = 1e-9;

/** Fewer minutes first, then fewer parts, then the wider margin: negative when `a` is the better. */
export function compareChoices(a: Choice, b: Choice): number {
  if (Math.abs(a.minutes - b.minutes) > SAME_MINUTES) return a.minutes - b.minutes;
  if (a.partsMinor !== b.partsMinor) return a.partsMinor - b.partsMinor;
  return b.reached.marginG - a.reached.marginG;
}

/** The best choice inside for each set of set-ups that may be open, by their bits; `undefined` where there is none. */
export function bestBySetups(choices: readonly Choice[], setupCount: number): readonly (Choice | undefined)[] {
  const best: (Choice | undefined)[] = Array.from({ length: 1 << setupCount }, () => undefined);
  const offer = (bits: number, choice: Choice | undefined): void => {
    const standing = best[bits];
    if (choice !== undefined && (standing === undefined || compareChoices(choice, standing) < 0)) best[bits] = choice;
  };
  for (const choice of choices) if (isInside(choice)) offer(choice.setups, choice);
  for (let bit = 1; bit < best.length; bit <<= 1) {
    for (let bits = 0; bits < best.length; bits += 1) if ((bits & bit) !== 0) offer(bits, best[bits ^ bit]);
  }
  return best;
}
