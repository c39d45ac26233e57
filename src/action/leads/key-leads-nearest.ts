import type { LeadBounds, Rest } from './key-leads-bound.ts';
import type { Candidate } from './key-leads-candidates.ts';

/**
 * Spaced choice whose moment comes nearest to one that no choice meets; of two equally near the one found first.
 * Depth-first; a branch is left when the moments in its reach come no nearer than the best so far. Both ends of the reach are
 * tried first. Not complete when the limit of nodes ends it.
 * @source LAND-DOIG-1960
 */
export function nearestLeads(candidates: readonly Candidate[], bounds: LeadBounds, { leads, targetGMm }: { readonly leads: number; readonly targetGMm: number }, nodeLimit: number): { readonly places: readonly number[]; readonly complete: boolean } {
  const momentOf = (places: readonly number[]): number => places.reduce((sum, place) => sum + (candidates[place]?.momentGMm ?? 0), 0);
  const missOf = (places: readonly number[]): number => Math.abs(momentOf(places) - targetGMm);
  let places = [[], bounds.extreme('least'), bounds.extreme('most')].reduce<readonly number[]>((best, each) => (missOf(each) < missOf(best) ? each : best), []);
  let [best, nodes] = [missOf(places), 0];
  const search = (rest: Omit<Rest, 'lowGMm' | 'highGMm'>, lacking: number, chosen: readonly number[]): void => {
    if (Math.abs(lacking) < best) [best, places] = [Math.abs(lacking), chosen];
    for (let place = rest.from; rest.leads > 0 && place < candidates.length; place += 1) {
      const [least, most] = bounds.reach({ from: place, leads: rest.leads });
      if (Math.max(least - lacking, lacking - most) >= best) return;
      nodes += 1;
      if (nodes > nodeLimit) return;
      search({ from: bounds.next[place] ?? candidates.length, leads: rest.leads - 1 }, lacking - (candidates[place]?.momentGMm ?? 0), [...chosen, place]);
    }
  };
  search({ from: 0, leads }, targetGMm, []);
  return { places, complete: nodes <= nodeLimit };
}
