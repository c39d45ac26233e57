import { type Compass, type KeyNumber, type QuantityName, isQuantityName, keyCountOf, keyOfNote } from '#instrument';
import { usualColumns } from '../grid/grid-columns.ts';
import { slotsOf } from './walk-machine.ts';
import { type WalkOrderChoice, keysToWalk } from './walk-order.ts';
import type { WalkPlan } from './walk-state.ts';

/** What a walk goes over, as chosen. */
export interface WalkChoice extends WalkOrderChoice {
  readonly quantities: readonly QuantityName[];
}

export const usualChoice: WalkChoice = { quantities: usualColumns, order: 'chromatic', fromKey: 1, everyNth: 6 };

/** The plan of a choice on a keyboard; what a shorter keyboard does not have is left out. */
export function planOf(choice: WalkChoice, compass: Compass, repeats: number, locale: string): WalkPlan {
  const fromKey = Math.min(Math.max(1, choice.fromKey), keyCountOf(compass));
  const quantities = choice.quantities.filter(isQuantityName);
  return { keys: keysToWalk(compass, { ...choice, fromKey }), slots: slotsOf(quantities.length === 0 ? usualColumns : quantities, repeats), locale };
}

/** A key as typed, by number or by note. */
export function keyOf(typed: string, compass: Compass): KeyNumber | undefined {
  const number = Number(typed.trim());
  if (Number.isInteger(number) && number >= 1 && number <= keyCountOf(compass)) return number;
  return keyOfNote(compass, typed);
}
