/** The day of a moment by the calendar of this device, `2026-03-09`; Swedish writes its days as ISO 8601 does. */
export function dayHere(at: Date = new Date()): string {
  return at.toLocaleDateString('sv-SE');
}
