/** Longest pause between two characters of a scale that types like a keyboard; a hand is slower. */
const WEDGE_GAP_MS = 35;
const FEWEST_CHARACTERS = 2;

/** True when a Tab follows digits so fast that a scale sent both: then it ends the figure. A hand's Tab leaves the field, as everywhere. */
export function isWedgeTab(strokesMs: readonly number[], tabMs: number): boolean {
  const times = [...strokesMs, tabMs].slice(-FEWEST_CHARACTERS - 1);
  return times.length > FEWEST_CHARACTERS && times.every((time, index) => index === 0 || time - (times[index - 1] ?? time) <= WEDGE_GAP_MS);
}
