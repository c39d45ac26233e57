import { grams } from '#units';
import type { KeyLeadsProblem, LeadSet, PlacedLead } from './key-leads-problem.ts';
import { leadInertiaOf, leadMomentOf } from './lead.ts';

/** A lead that may be set, with what it does and what it costs. Lengths along the key in half micrometres, whole numbers. */
export interface Candidate {
  readonly lead: PlacedLead;
  /** Of the lead about the balance point, g·mm. */
  readonly momentGMm: number;
  readonly costG: number;
  /** The stretch of key the lead owns: half the gap to either side of its hole. */
  readonly back: number;
  readonly front: number;
}

/** The holes and grid places where a lead may be set, from the front of the key to the back by the front end of what each owns. */
export function candidatesOf(problem: KeyLeadsProblem): readonly Candidate[] {
  const old = problem.existingHoles.map((hole) => candidateOf({ ...hole, hole: 'existing' }, problem));
  const drills = [...new Set(problem.diametersMm)];
  const fresh = [...new Set(problem.gridMm)].flatMap((positionMm) => drills.map((diameterMm): PlacedLead => ({ diameterMm, positionMm, hole: 'new' })));
  return [...old, ...fresh.filter((lead) => mayDrill(lead, problem)).map((lead) => candidateOf(lead, problem))].sort((a, b) => b.front - a.front || a.costG - b.costG);
}

/**
 * Whether a new hole may be drilled: clear of every old hole by the gap, even a plugged one, and out of every keep-out.
 * Its rim may touch the end of a keep-out. @source PRACTICE
 */
export function mayDrill(lead: PlacedLead, { existingHoles, keepOutsMm = [], gapMm }: Pick<KeyLeadsProblem, 'existingHoles' | 'keepOutsMm' | 'gapMm'>): boolean {
  const [back, front] = stretchOf(lead, gapMm);
  const clear = existingHoles.every((hole) => {
    const [holeBack, holeFront] = stretchOf(hole, gapMm);
    return front <= holeBack || holeFront <= back;
  });
  const [rimBack, rimFront] = stretchOf(lead, 0);
  return clear && keepOutsMm.every(([from, to]) => rimFront <= 2 * micrometres(from) || 2 * micrometres(to) <= rimBack);
}

/** Whether two leads leave the gap between them. |x_i − x_j| ≥ (d_i + d_j)/2 + gap, in whole micrometres. @source OWN */
export function keepApart(one: Pick<PlacedLead, 'positionMm' | 'diameterMm'>, other: Pick<PlacedLead, 'positionMm' | 'diameterMm'>, gapMm: number): boolean {
  return 2 * Math.abs(micrometres(one.positionMm) - micrometres(other.positionMm)) >= micrometres(one.diameterMm) + micrometres(other.diameterMm) + 2 * micrometres(gapMm);
}

/** What leads come to: front weight, and their effective mass with the cost of new holes. @source OWN */
export function leadSetOf(leads: readonly PlacedLead[], problem: KeyLeadsProblem): LeadSet {
  const candidates = leads.map((lead) => candidateOf(lead, problem));
  const [moment, cost] = candidates.reduce(([m, c], { momentGMm, costG }) => [m + momentGMm, c + costG], [0, 0]);
  return { leads, frontWeightG: grams(problem.bareFrontWeightG + moment / problem.keyFrontMm), costG: grams(cost) };
}

function candidateOf(lead: PlacedLead, problem: KeyLeadsProblem): Candidate {
  const [back, front] = stretchOf(lead, problem.gapMm);
  const inertia = leadInertiaOf(lead, problem) / problem.keyFrontMm ** 2;
  return { lead, momentGMm: leadMomentOf(lead, problem), costG: inertia + (lead.hole === 'new' ? problem.newHoleCostG : 0), back, front };
}

const micrometres = (lengthMm: number): number => Math.round(lengthMm * 1000);

/** Ends of the stretch a hole owns, in half micrometres. */
function stretchOf({ positionMm, diameterMm }: Pick<PlacedLead, 'positionMm' | 'diameterMm'>, gapMm: number): readonly [number, number] {
  const middle = 2 * micrometres(positionMm);
  const half = micrometres(diameterMm) + micrometres(gapMm);
  return [middle - half, middle + half];
}
