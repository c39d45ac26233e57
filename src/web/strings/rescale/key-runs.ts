import { type Compass, type KeyNumber, noteNameOf } from '#instrument';

/** Keys in runs without gaps. */
export function runsOf(keys: readonly KeyNumber[]): readonly (readonly [first: KeyNumber, last: KeyNumber])[] {
  const runs: (readonly [KeyNumber, KeyNumber])[] = [];
  for (const key of keys.toSorted((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last?.[1] === key - 1) runs[runs.length - 1] = [last[0], key];
    else runs.push([key, key]);
  }
  return runs;
}

/** Keys by name, neighbours drawn together: `A0–C1, E4`. */
export function keysSaid(compass: Compass, keys: readonly KeyNumber[]): string {
  return runsOf(keys).map(([first, last]) => (first === last ? noteNameOf(compass, first) : `${noteNameOf(compass, first)}–${noteNameOf(compass, last)}`)).join(', ');
}
