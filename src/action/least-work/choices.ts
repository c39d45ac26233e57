import type { KeyTask, Offer } from './offer.ts';
import { type Reached, reachOf } from './reach.ts';
import { TOUCHING_G } from './window.ts';

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

/** What a set of operations takes and gives. */
export function choiceOf(task: KeyTask, chosen: readonly Offer[]): Choice {
  return { chosen, ...costOf(chosen), partsMinor: chosen.reduce((sum, { partsMinor }) => sum + partsMinor, 0), reached: reachOf(task, chosen) };
}

/** Minutes of a set of operations, and the set-ups that all of it together needs. */
export function costOf(chosen: readonly Offer[]): Pick<Choice, 'minutes' | 'setups'> {
  return { minutes: chosen.reduce((sum, { minutes }) => sum + minutes, 0), setups: chosen.reduce((bits, { setups }) => bits | setups, 0) };
}

/** Whether a set of operations brings its key inside all limits. */
export function isInside({ reached }: Choice): boolean {
  return reached.marginG >= -TOUCHING_G;
}

/** Minutes apart by less than this are the same. */
export const SAME_MINUTES = 1e-9;

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
