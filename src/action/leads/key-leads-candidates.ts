import { type Millimetres, grams } from '#units';
import type { KeyLeadsProblem, LeadSet, OtherInsert, PlacedLead } from './key-leads-problem.ts';
import { type Lead, leadInertiaOf, leadMomentOf } from './lead.ts';

/** A lead that may be set, with what it does and what it costs; below nought where it saves a plug. Lengths along the key in half micrometres, whole numbers. */
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
  const { existingHoles, otherInserts = [] } = problem;
  const old = existingHoles.flatMap((hole): readonly Lead[] => [
    hole, ...trimmed(hole, problem), ...otherInserts.filter(({ diameterMm, densityGPerMm3 }) => diameterMm === hole.diameterMm && densityGPerMm3 !== hole.densityGPerMm3).map((insert) => insertOf(insert, hole.positionMm)),
  ]);
  const fresh = [...new Set(problem.gridMm)].flatMap((positionMm) => freshLeads(positionMm, problem)).filter((lead) => mayDrill(lead, problem));
  return [...old.map((lead) => candidateOf({ ...lead, hole: 'existing' }, problem)), ...fresh.map((lead) => candidateOf({ ...lead, hole: 'new' }, problem))].sort((a, b) => b.front - a.front || a.costG - b.costG);
}

/** Metal left around the hole of a lead that is drilled out. @source PRACTICE */
export const LEAST_RIM_MM = 1.5;

/** A lead drilled out as far as the drills go and its rim allows. */
function trimmed(lead: Lead, { trimDrillsMm = [] }: KeyLeadsProblem): readonly Lead[] {
  return [...new Set(trimDrillsMm)].filter((drill) => drill > (lead.boreMm ?? 0) && drill <= lead.diameterMm - 2 * LEAST_RIM_MM).map((boreMm) => ({ ...lead, boreMm }));
}

/** What may go into a new hole: a lead of each drill and the inserts of other metals, the smallest of either drilled out. */
function freshLeads(positionMm: Millimetres, problem: KeyLeadsProblem): readonly Lead[] {
  const drills = [...new Set(problem.diametersMm)].sort((a, b) => a - b);
  const solid = drills.map((diameterMm): Lead => ({ diameterMm, positionMm }));
  const inserts = (problem.otherInserts ?? []).map((insert) => insertOf(insert, positionMm)).toSorted((a, b) => a.diameterMm - b.diameterMm);
  const smallest = [...solid.slice(0, 1), ...inserts.slice(0, 1)];
  return [...solid, ...inserts, ...smallest.flatMap((lead) => trimmed(lead, problem))];
}

const insertOf = ({ diameterMm, densityGPerMm3 }: OtherInsert, positionMm: Millimetres): Lead => ({ diameterMm, positionMm, densityGPerMm3 });

/** The lead found in the old hole that a lead goes into. */
function foundIn(lead: PlacedLead, { existingHoles }: Pick<KeyLeadsProblem, 'existingHoles'>): Lead | undefined {
  return lead.hole === 'new' ? undefined : existingHoles.find(({ positionMm, diameterMm }) => positionMm === lead.positionMm && diameterMm === lead.diameterMm);
}

/** Whether a lead is drilled out further than it was found. */
export function isTrimmed(lead: PlacedLead, problem: Pick<KeyLeadsProblem, 'existingHoles'>): boolean {
  return (lead.boreMm ?? 0) > (foundIn(lead, problem)?.boreMm ?? 0);
}

/** Whether the lead of an old hole is taken out for an insert of another metal. */
export function isExchanged(lead: PlacedLead, problem: Pick<KeyLeadsProblem, 'existingHoles'>): boolean {
  const found = foundIn(lead, problem);
  return found !== undefined && found.densityGPerMm3 !== lead.densityGPerMm3;
}

/**
 * Whether a new hole may be drilled: clear of every old hole by the gap, even a plugged one, and out of every keep-out.
 * Its rim may touch the end of a keep-out. @source PRACTICE
 */
export function mayDrill(lead: Pick<Lead, 'positionMm' | 'diameterMm'>, { existingHoles, keepOutsMm = [], gapMm }: Pick<KeyLeadsProblem, 'existingHoles' | 'keepOutsMm' | 'gapMm'>): boolean {
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

/** What leads come to: front weight, and their effective mass with what the work counts for. @source OWN */
export function leadSetOf(leads: readonly PlacedLead[], problem: KeyLeadsProblem): LeadSet {
  const candidates = leads.map((lead) => candidateOf(lead, problem));
  const [moment, cost] = candidates.reduce(([m, c], { momentGMm, costG }) => [m + momentGMm, c + costG], [0, 0]);
  return { leads, frontWeightG: grams(problem.bareFrontWeightG + moment / problem.keyFrontMm), costG: grams(cost + (problem.plugCostG ?? 0) * problem.existingHoles.length) };
}

function candidateOf(lead: PlacedLead, problem: KeyLeadsProblem): Candidate {
  const [back, front] = stretchOf(lead, problem.gapMm);
  return { lead, momentGMm: leadMomentOf(lead, problem), costG: leadInertiaOf(lead, problem) / problem.keyFrontMm ** 2 + workOf(lead, problem), back, front };
}

/** What the work on one lead counts for; one that stays in an old hole saves taking it out and plugging. */
function workOf(lead: PlacedLead, problem: KeyLeadsProblem): number {
  const { leadCostG = 0, trimCostG = 0, otherInserts = [] } = problem;
  const insert = lead.densityGPerMm3 === undefined ? 0 : otherInserts.find(({ diameterMm, densityGPerMm3 }) => diameterMm === lead.diameterMm && densityGPerMm3 === lead.densityGPerMm3)?.costG ?? 0;
  return leadCostG + insert + holeCostOf(lead, problem) + (isTrimmed(lead, problem) ? trimCostG : 0);
}

/** A hole is drilled, or a lead taken out for another, or neither. */
function holeCostOf(lead: PlacedLead, problem: KeyLeadsProblem): number {
  if (lead.hole === 'new') return problem.newHoleCostG;
  return isExchanged(lead, problem) ? 0 : 0 - (problem.plugCostG ?? 0);
}

const micrometres = (lengthMm: number): number => Math.round(lengthMm * 1000);

/** Ends of the stretch a hole owns, in half micrometres. */
function stretchOf({ positionMm, diameterMm }: Pick<PlacedLead, 'positionMm' | 'diameterMm'>, gapMm: number): readonly [number, number] {
  const middle = 2 * micrometres(positionMm);
  const half = micrometres(diameterMm) + micrometres(gapMm);
  return [middle - half, middle + half];
}
