import { type Compass, type KeyNumber, noteNameOf } from '#instrument';

/** Keys in words, runs drawn together: `A0–C1, E4`. Keys rise. */
export function sayRuns(keys: readonly KeyNumber[], compass: Compass): string {
  return runsOf(keys).map(([first, last]) => (first === last ? noteNameOf(compass, first) : `${noteNameOf(compass, first)}–${noteNameOf(compass, last)}`)).join(', ');
}

/** Keys in runs without gaps. */
function runsOf(keys: readonly KeyNumber[]): readonly (readonly [number, number])[] {
  const runs: (readonly [number, number])[] = [];
  for (const key of keys) {
    const last = runs.at(-1);
    if (last?.[1] === key - 1) runs[runs.length - 1] = [last[0], key];
    else runs.push([key, key]);
  }
  return runs;
}
