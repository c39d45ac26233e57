import type { Millimetres } from '#units';

/** Half of what a drawn wire may vary by: closer than this to a size, a wire is of that size. ±0.0004 inch. @source ASTM-A228 */
const SAME_SIZE_MM = 0.0102;

/** The next size of a list above or below a diameter, sizes within the drawing tolerance of it passed over; `undefined` at the end of the list. */
export function sizeBeside(sizes: readonly Millimetres[], diameterMm: number, direction: 1 | -1): Millimetres | undefined {
  const beyond = sizes.filter((size) => (size - diameterMm) * direction > SAME_SIZE_MM);
  return beyond.toSorted((a, b) => (a - b) * direction)[0];
}
