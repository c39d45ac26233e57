/**
 * Median of the first `count` figures of a buffer, which it reorders: selection instead of sorting, for figures worked out at each keystroke.
 * @throws RangeError on an empty list: callers refuse that first.
 * @source HOARE-1961
 */
export function medianInPlace(buffer: Float64Array, count: number): number {
  if (count === 0) throw new RangeError('median of an empty list');
  const middle = count >> 1;
  const upper = selectInPlace(buffer, count, middle);
  if (count % 2 === 1) return upper;
  let lower = Number.NEGATIVE_INFINITY;
  for (let at = 0; at < middle; at += 1) lower = Math.max(lower, buffer[at] ?? lower);
  return (lower + upper) / 2;
}

/** Puts the `rank`-th smallest in its place, smaller ones before it, and answers it. */
function selectInPlace(buffer: Float64Array, count: number, rank: number): number {
  let low = 0;
  let high = count - 1;
  while (low < high) {
    const pivot = buffer[(low + high) >> 1] ?? 0;
    let left = low;
    let right = high;
    while (left <= right) {
      while ((buffer[left] ?? pivot) < pivot) left += 1;
      while ((buffer[right] ?? pivot) > pivot) right -= 1;
      if (left > right) break;
      const held = buffer[left] ?? 0;
      buffer[left] = buffer[right] ?? 0;
      buffer[right] = held;
      left += 1;
      right -= 1;
    }
    if (rank <= right) high = right;
    else if (rank >= left) low = left;
    else break;
  }
  return buffer[rank] ?? Number.NaN;
}
