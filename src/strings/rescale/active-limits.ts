import { brokenLimitsOf } from './limits.ts';
import { isWithin, loadBandOf } from './load-band.ts';
import { changeOf } from './local-search.ts';
import { type ActiveLimit, type LimitName, type RescaleChoice, type RescaleProblem, limitNames } from './problem.ts';
import { type OpenNote, type Path, candidateOf, rowsOf, unariesOf } from './row.ts';

/**
 * The limits that hold a choice back: where another candidate of one note alone, shut out by one limit only, would lower
 * the objective; and the total, where a change of one note that leaves the band would. @source OWN
 */
export function activeLimitsOf(problem: RescaleProblem, notes: readonly OpenNote[], choices: readonly RescaleChoice[]): readonly ActiveLimit[] {
  const { limits = {} } = problem;
  const rows = rowsOf(notes.map((note) => ({ ...note, open: note.figures.map((_, index) => index) })), problem.weights);
  const path: Path = Int32Array.from([0, ...choices.map(({ candidateIndex }, place) => rows[place + 1]?.candidates.indexOf(candidateIndex) ?? 0)]);
  const [unaries, band, { loadN }] = [unariesOf(rows), loadBandOf(limits), candidateOf(rows, path)];
  const totals = (['totalTensionN', 'maxTotalTensionN'] as const).filter((name) => limits[name] !== undefined);
  const found = new Map<LimitName, Set<number>>();
  const note = (limit: LimitName, key?: number): void => {
    found.set(limit, new Set([...(found.get(limit) ?? []), ...(key === undefined ? [] : [key])]));
  };
  for (const [place, { note: { key }, figures, note: given }] of notes.entries()) {
    const [broken, row] = [brokenLimitsOf(given, figures, limits), rows[place + 1]];
    const before = row?.load[path[place + 1] ?? 0] ?? 0;
    for (const [m, index] of (row?.candidates ?? []).entries()) {
      const [fault, ...further] = broken[index] ?? [];
      const stays = isWithin(band, loadN - before + (row?.load[m] ?? 0));
      const blamed = [...(fault === undefined ? [] : [fault, ...further]), ...(stays ? [] : totals)];
      const [only] = blamed;
      if (only === undefined || blamed.length > 1 || changeOf(rows, unaries, path, place + 1, m) > -1e-12) continue;
      note(only, only === 'totalTensionN' || only === 'maxTotalTensionN' ? undefined : key);
    }
  }
  return limitNames.flatMap((limit) => (found.has(limit) ? [{ limit, keys: [...(found.get(limit) ?? [])] }] : []));
}
