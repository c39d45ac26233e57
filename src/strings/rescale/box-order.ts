/**
 * An order of points in which each run of `size` lies close together: halved again and again along the longest side.
 * `columns` holds the coordinates; weights of nought leave a coordinate out. @source OWN
 */
export function boxOrder(columns: readonly Float64Array[], weights: readonly number[], size: number): readonly number[] {
  const all = Array.from(columns[0] ?? [], (_, index) => index);
  return halved(all, columns, weights, size);
}

function halved(points: readonly number[], columns: readonly Float64Array[], weights: readonly number[], size: number): readonly number[] {
  if (points.length <= size) return points;
  const lengths = columns.map((column, f) => Math.sqrt(weights[f] ?? 0) * spreadOf(points, column));
  const column = columns[lengths.indexOf(Math.max(...lengths))] ?? new Float64Array(0);
  const sorted = [...points].sort((a, b) => (column[a] ?? 0) - (column[b] ?? 0) || a - b);
  const middle = Math.ceil(points.length / 2 / size) * size;
  return [sorted.slice(0, middle), sorted.slice(middle)].flatMap((half) => halved(half, columns, weights, size));
}

function spreadOf(points: readonly number[], column: Float64Array): number {
  const values = points.map((index) => column[index] ?? 0);
  return Math.max(...values) - Math.min(...values);
}
