import { type Grams, grams } from '#units';
import { isExchanged, isTrimmed, leadSetOf } from './key-leads-candidates.ts';
import type { KeyLeads, KeyLeadsProblem, LeadSet, PlacedLead } from './key-leads-problem.ts';
import { keyLeads } from './key-leads.ts';
import { leadInertiaOf } from './lead.ts';

/** Other ways to lead a key: leave it, use old holes alone, set as few pieces as may be, or look at inertia alone. */
export const leadWayNames = ['asItLies', 'oldHoles', 'fewestPieces', 'leastInertia'] as const;
export type LeadWayName = (typeof leadWayNames)[number];

/** What a set of leads is for the bench: pieces in the key, and what is to be done. */
export interface LeadCounts {
  readonly pieces: number;
  readonly drilled: number;
  readonly trimmed: number;
  readonly plugged: number;
  /** Leads taken out for an insert of another metal. */
  readonly exchanged: number;
  /** Effective mass of the leads at the measuring point. */
  readonly inertiaG: Grams;
}

/** One way, costed as the problem costs; where it misses the target, by how much beyond the tolerance. */
export interface LeadWay extends LeadSet, LeadCounts {
  readonly way: LeadWayName;
  readonly missG: Grams;
  readonly proven: boolean;
}

/** What a set asks of the bench. @source OWN */
export function leadCountsOf(leads: readonly PlacedLead[], problem: KeyLeadsProblem): LeadCounts {
  const refilled = leads.filter(({ hole }) => hole === 'existing').length;
  return {
    pieces: leads.length, drilled: leads.length - refilled, trimmed: leads.filter((lead) => isTrimmed(lead, problem)).length, plugged: problem.existingHoles.length - refilled,
    exchanged: leads.filter((lead) => isExchanged(lead, problem)).length,
    inertiaG: grams(leads.reduce((sum, lead) => sum + leadInertiaOf(lead, problem), 0) / problem.keyFrontMm ** 2),
  };
}

/** Far dearer than any inertia: what costs so much is done as seldom as may be. */
const DEAR = grams(1e5);
const FREE = grams(0);

/**
 * Other ways beside the optimum, each itself an optimum of its own wish or the set that comes nearest; those that come to the same
 * leads as the optimum or as a way before are left out.
 * @source OWN
 */
export function leadWaysOf(problem: KeyLeadsProblem, answer: KeyLeads): readonly LeadWay[] {
  const known = new Set([leadsSaid(answer.leads)]);
  return leadWayNames.flatMap((way) => {
    const { leads, proven } = setOfWay(way, problem);
    const said = leadsSaid(leads);
    if (known.has(said)) return [];
    known.add(said);
    const set = leadSetOf(leads, problem);
    return [{ way, ...set, ...leadCountsOf(leads, problem), proven, missG: grams(Math.max(0, Math.abs(set.frontWeightG - problem.targetFrontWeightG) - problem.toleranceG)) }];
  });
}

function setOfWay(way: LeadWayName, problem: KeyLeadsProblem): Pick<KeyLeads, 'leads' | 'proven'> {
  if (way === 'asItLies') return { leads: problem.existingHoles.map((lead): PlacedLead => ({ ...lead, hole: 'existing' })).toSorted((a, b) => b.positionMm - a.positionMm), proven: true };
  const wished: Readonly<Record<Exclude<LeadWayName, 'asItLies'>, Partial<KeyLeadsProblem>>> = {
    oldHoles: { gridMm: [] }, fewestPieces: { leadCostG: DEAR }, leastInertia: { newHoleCostG: FREE, leadCostG: FREE, plugCostG: FREE, trimCostG: FREE },
  };
  const solved = keyLeads({ ...problem, ...wished[way] });
  return solved.ok ? solved.value : { leads: [], proven: false };
}

const leadsSaid = (leads: readonly PlacedLead[]): string => JSON.stringify(leads.map(({ positionMm, diameterMm, boreMm, densityGPerMm3, hole }) => [positionMm, diameterMm, boreMm, densityGPerMm3, hole]));
