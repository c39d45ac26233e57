import { type LeadBounds, leadReachOf } from './key-leads-bound.ts';
import { candidatesOf } from './key-leads-candidates.ts';
import { type KeyLeadsProblem, keyLeadsIssues } from './key-leads-problem.ts';

/** Steps after which a question of reach alone is left open. */
const STEPS = 20_000;

/**
 * Whether some legal set meets the target, without asking what it costs: no prices are tabled, and the first set found ends it.
 * Depth-first; a branch is left when its reach and the window do not meet. A search that ends at its limit has found none.
 * @source LAND-DOIG-1960
 */
export function meetsTarget(problem: KeyLeadsProblem): boolean {
  if (keyLeadsIssues(problem).length > 0) return false;
  const { targetFrontWeightG, toleranceG, bareFrontWeightG, keyFrontMm, maxLeads } = problem;
  const candidates = candidatesOf(problem);
  const moments = Float64Array.from(candidates, ({ momentGMm }) => momentGMm);
  const momentOf = (frontWeightG: number): number => (frontWeightG - bareFrontWeightG) * keyFrontMm;
  return meets({ ...leadReachOf(candidates, maxLeads), moments }, { from: 0, leads: maxLeads, lowGMm: momentOf(targetFrontWeightG - toleranceG), highGMm: momentOf(targetFrontWeightG + toleranceG) }, { left: STEPS });
}

interface Known extends Pick<LeadBounds, 'next' | 'reach'> {
  readonly moments: Float64Array;
}

function meets(known: Known, { from, leads, lowGMm, highGMm }: { readonly from: number; readonly leads: number; readonly lowGMm: number; readonly highGMm: number }, steps: { left: number }): boolean {
  if (lowGMm <= 0 && highGMm >= 0) return true;
  for (let place = from; leads > 0 && place < known.moments.length; place += 1) {
    const [least, most] = known.reach({ from: place, leads });
    if (lowGMm > most || highGMm < least || steps.left <= 0) return false;
    steps.left -= 1;
    const moment = known.moments[place] ?? 0;
    if (meets(known, { from: known.next[place] ?? known.moments.length, leads: leads - 1, lowGMm: lowGMm - moment, highGMm: highGMm - moment }, steps)) return true;
  }
  return false;
}
