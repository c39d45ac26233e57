import type { Place, QuantityName, State } from '#instrument';

/** Where a reading stands, whole: a state of one stay, a quantity, and the place it is measured on. */
export interface FigurePlace extends Place {
  readonly cycle: number;
  readonly state: State;
  readonly quantity: QuantityName;
}

/** A reading's place as the log writes it: `c1/found/downWeightG/key/40/1`. */
export function placeText({ cycle, state, quantity, scope, index, repeat }: Omit<FigurePlace, 'quantity'> & { readonly quantity: string }): string {
  return `c${String(cycle)}/${state}/${quantity}/${scope}/${String(index)}/${String(repeat)}`;
}
