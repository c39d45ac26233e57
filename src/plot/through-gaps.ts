import type { KeyNumber } from '#instrument';

/** A curve known at some keys as it is drawn over all of them (index = key − 1): straight across the gaps between, nothing beyond its ends. */
export function throughGaps(known: ReadonlyMap<KeyNumber, number>): readonly (number | undefined)[] {
  const keys = [...known.keys()].sort((a, b) => a - b);
  const [first = 1, last = 0] = [keys[0], keys.at(-1)];
  return Array.from({ length: last }, (_, index) => {
    const key = index + 1;
    if (key < first) return undefined;
    const above = keys.find((one) => one >= key) ?? last;
    const below = keys.findLast((one) => one <= key) ?? first;
    const [low = 0, high = 0] = [known.get(below), known.get(above)];
    return below === above ? low : low + ((key - below) / (above - below)) * (high - low);
  });
}
