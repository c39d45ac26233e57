import { grams, ratio } from '#units';
import type { KeyTask } from './offer.ts';
import { type ChangeKind, type SingleChange, type TouchState, changeKinds } from './problem.ts';
import { balanceWindowOf } from './window.ts';

/** A state of a key, with the doubt of the friction in it. */
export interface DoubtfulState extends TouchState {
  readonly doubtG: number;
}

/**
 * Of each kind the smallest change, however large, that alone would bring a key inside: from as found where that does it, else
 * on top of the nearest work. Kinds that cannot are left out: no lead makes up for friction.
 * @source OWN the limits of `balanceWindowOf` solved for one change
 */
export function singleChangesOf(task: KeyTask, asFound: DoubtfulState, nearest: DoubtfulState): readonly SingleChange[] {
  return changeKinds.flatMap((changes): readonly SingleChange[] => {
    const alone = changeFor(changes, task, asFound);
    const further = changeFor(changes, task, nearest);
    const amount = alone ?? further;
    if (amount === undefined) return [];
    return [{ changes, ...(changes === 'ratio' ? { ratioChange: ratio(amount) } : { changeG: grams(amount) }), alone: alone !== undefined }];
  });
}

function changeFor(changes: ChangeKind, task: KeyTask, state: DoubtfulState): number | undefined {
  if (changes === 'friction') return frictionChangeFor(task, state);
  const lacking = balanceChangeFor(task, state);
  if (lacking === undefined || changes === 'front') return lacking === undefined ? undefined : 0 - lacking;
  const { hammerWeightG, weightRatio } = state;
  if (hammerWeightG === undefined || weightRatio === undefined) return undefined;
  const [changed, by] = changes === 'hammer' ? [hammerWeightG, weightRatio] : [weightRatio, hammerWeightG];
  return changed + lacking / by > 0 ? lacking / by : undefined;
}

/** To the nearest end of the window; none when the friction leaves no window. */
function balanceChangeFor({ limits }: KeyTask, { balanceWeightG, frictionG, doubtG }: DoubtfulState): number | undefined {
  const { lowG, highG, frictionMarginG } = balanceWindowOf(limits, { frictionG, doubtG });
  if (lowG > highG || frictionMarginG < 0) return undefined;
  return Math.min(Math.max(balanceWeightG, lowG), highG) - balanceWeightG;
}

/** To the nearest friction at which the balance weight as it is lies inside; each limit is linear in the friction. */
function frictionChangeFor({ limits }: KeyTask, { balanceWeightG: balance, frictionG, doubtG }: DoubtfulState): number | undefined {
  const byDown = limits.quantity === 'downWeight';
  if (!byDown && (balance < limits.lowG || balance > limits.highG)) return undefined;
  const low = Math.max(0, limits.frictionFromG + doubtG, byDown ? limits.lowG - balance + doubtG : 0);
  const high = Math.min(limits.frictionToG - doubtG, balance - limits.minUpWeightG - doubtG, byDown ? limits.highG - balance - doubtG : Infinity);
  return low > high ? undefined : Math.min(Math.max(frictionG, low), high) - frictionG;
}
