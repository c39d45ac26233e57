import type { Issue } from '#result';
import { type LoadBand, loadsToCome } from './load-band.ts';
import type { RescaleLimits, RescaleProblem } from './problem.ts';
import type { Row } from './row.ts';

/** What is wrong with the row of notes itself: keys out of order or left out, locks on candidates there are not. */
export function problemIssues({ notes, limits = {} }: RescaleProblem): readonly Issue[] {
  const keys = notes.flatMap(({ key }, place): readonly Issue[] => {
    const below = notes[place - 1]?.key;
    if (below === undefined || key === below + 1) return [];
    return [{ code: 'order', path: `notes[${String(place)}].key`, given: key, allowed: `${String(below + 1)}, the key above ${String(below)}: lowest first, none left out`, params: { reason: 'notesInOrder', below, next: below + 1 } }];
  });
  const locks = notes.flatMap(({ lockedCandidate, candidates }, place): readonly Issue[] => {
    if (lockedCandidate === undefined || lockedCandidate < candidates.length) return [];
    return [{ code: 'range', path: `notes[${String(place)}].lockedCandidate`, given: lockedCandidate, allowed: `0 to ${String(candidates.length - 1)}`, params: { min: 0, max: candidates.length - 1 } }];
  });
  return [...keys, ...locks, ...totalIssues(limits)];
}

function totalIssues({ totalTensionN, maxTotalTensionN }: RescaleLimits): readonly Issue[] {
  if (totalTensionN === undefined || maxTotalTensionN === undefined || totalTensionN <= maxTotalTensionN) return [];
  return [{ code: 'order', path: 'limits.totalTensionN', given: totalTensionN, allowed: `at most maxTotalTensionN, ${String(maxTotalTensionN)}`, params: { reason: 'totalAboveCap', max: maxTotalTensionN } }];
}

/** What is wrong with the totals asked for: less or more than the candidates can pull together. */
export function loadIssues(rows: readonly Row[], band: LoadBand, limits: RescaleLimits): readonly Issue[] {
  const { least, most } = loadsToCome(rows);
  const [min, max] = [least[0] ?? 0, most[0] ?? 0];
  if (min <= band.high && max >= band.low) return [];
  const name = limits.totalTensionN === undefined ? 'maxTotalTensionN' : 'totalTensionN';
  const given = limits[name] ?? 0;
  const short = min > band.high ? min - given : given - max;
  return [{
    code: 'unreachable', path: `limits.${name}`, given, allowed: `${String(min)} to ${String(max)}, what the candidates within the other limits can pull together: ${String(short)} away`,
    params: { reason: 'totalOutOfReach', min, max, short },
  }];
}
