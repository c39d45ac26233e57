import { type Result, ok, refuse } from '#result';
import { grams } from '#units';
import { type LeadBounds, leadBoundsOf } from './key-leads-bound.ts';
import { type Candidate, candidatesOf, leadSetOf } from './key-leads-candidates.ts';
import { finishLeads } from './key-leads-finish.ts';
import { nearestLeads } from './key-leads-nearest.ts';
import { type KeyLeads, type KeyLeadsProblem, type LeadSet, NODE_LIMIT, keyLeadsIssues } from './key-leads-problem.ts';
import { cheapestLeads } from './key-leads-search.ts';

/**
 * The leads that give a key its front weight at the least cost, proven.
 * min Σ m·(x² + d²/8)/a² + c_new·(new holes), over old holes at their own diameter and new ones on a grid, with
 * |FW₀ + Σ m·x/a − FW*| ≤ tolerance, at most so many leads, and |x_i − x_j| ≥ (d_i + d_j)/2 + gap between any two.
 * A new hole keeps the gap to every old one, plugged or not, and stays out of the keep-outs. An old hole without lead is plugged
 * with wood. With c_new 0 the cost is inertia alone, which drifts toward more lead nearer the balance point.
 * Not feasible: the leads are those that come nearest, with the front weights within reach and the miss.
 * Refuses inserts no heavier than wood, old holes that meet, keep-outs that end before they begin.
 * @source OWN branch and bound; bounds as in `leadBoundsOf`
 */
export function keyLeads(problem: KeyLeadsProblem): Result<KeyLeads> {
  const issues = keyLeadsIssues(problem);
  return issues.length > 0 ? refuse(...issues) : ok(solve(problem));
}

function solve(problem: KeyLeadsProblem): KeyLeads {
  const candidates = candidatesOf(problem);
  const lacking = (frontWeightG: number): number => (frontWeightG - problem.bareFrontWeightG) * problem.keyFrontMm;
  const window = [lacking(problem.targetFrontWeightG - problem.toleranceG), lacking(problem.targetFrontWeightG + problem.toleranceG)] as const;
  const bounds = leadBoundsOf(candidates, problem.maxLeads, window);
  const whole = { from: 0, leads: problem.maxLeads, lowGMm: window[0], highGMm: window[1] };
  const found = cheapestLeads(candidates, bounds, whole, problem.nodeLimit ?? NODE_LIMIT);
  if (found.places === undefined) return missed(problem, candidates, bounds, found.complete);
  const set = setOf(found.places, candidates, problem);
  const finish = finishLeads(set, problem);
  return { feasible: true, ...set, plugs: plugsOf(set, problem), proven: found.complete, ...(finish === undefined ? {} : { finish }) };
}

function missed(problem: KeyLeadsProblem, candidates: readonly Candidate[], bounds: LeadBounds, proven: boolean): KeyLeads {
  const { targetFrontWeightG, bareFrontWeightG, keyFrontMm, maxLeads, toleranceG } = problem;
  const target = { leads: maxLeads, targetGMm: (targetFrontWeightG - bareFrontWeightG) * keyFrontMm };
  const set = setOf(nearestLeads(candidates, bounds, target, problem.nodeLimit ?? NODE_LIMIT).places, candidates, problem);
  const [least, most] = bounds.reach({ from: 0, leads: maxLeads });
  return {
    feasible: false, ...set, plugs: plugsOf(set, problem), proven,
    reachableG: [grams(bareFrontWeightG + least / keyFrontMm), grams(bareFrontWeightG + most / keyFrontMm)],
    missG: grams(Math.abs(set.frontWeightG - targetFrontWeightG) - toleranceG),
  };
}

/** From the front of the key to the back. */
function setOf(places: readonly number[], candidates: readonly Candidate[], problem: KeyLeadsProblem): LeadSet {
  return leadSetOf(places.flatMap((place) => candidates[place]?.lead ?? []), problem);
}

function plugsOf({ leads }: LeadSet, { existingHoles }: KeyLeadsProblem): KeyLeads['plugs'] {
  return existingHoles.filter((hole) => !leads.some((lead) => lead.hole === 'existing' && lead.positionMm === hole.positionMm && lead.diameterMm === hole.diameterMm));
}
