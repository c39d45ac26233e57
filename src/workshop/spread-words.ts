import type { Say } from '#text';
import type { JudgedSpread } from './regulation-input.ts';

/** The spread in words: as read beside what is asked, by how much it is off, and what to do; `mm` prints a length. */
export function sayOfSpread(say: Say, { readMm, askedMm, toleranceMm, isInside }: JudgedSpread, mm: (value: number) => string): string {
  const tolerance = mm(toleranceMm);
  if (readMm === undefined) return say('regulation.spread.unread', { asked: mm(askedMm ?? 0), tolerance });
  if (askedMm === undefined) return say('regulation.spread.read', { read: mm(readMm) });
  const words = { read: mm(readMm), asked: mm(askedMm), tolerance };
  return isInside === true ? say('regulation.spread.inside', words) : say('regulation.spread.outside', { ...words, by: mm(Math.abs(readMm - askedMm)), way: readMm > askedMm ? 'high' : 'low' });
}
