import { millimetres } from '#units';
import { keepApart, leadSetOf, mayDrill } from './key-leads-candidates.ts';
import type { KeyLeadsProblem, LeadSet, PlacedLead } from './key-leads-problem.ts';
import { leadMassOf } from './lead.ts';

/**
 * The finishing touch: the optimum leans on the light edge of the tolerance, since lead costs, so one new hole is moved off the
 * grid until the target is met exactly. x' = x + (FW* − FW)·a/m.
 * Of the new holes that may be moved so far, inside the ends of the grid, clear of the others and of keep-outs, the one that then
 * costs least. It is told beside the optimum and never in its place: what is proven is proven of the places of the grid.
 * @returns `undefined` where nothing is to be moved or nothing may be.
 * @source OWN
 */
export function finishLeads(set: LeadSet, problem: KeyLeadsProblem): LeadSet | undefined {
  const lacking = (problem.targetFrontWeightG - set.frontWeightG) * problem.keyFrontMm;
  if (lacking === 0) return undefined;
  const tries = set.leads.flatMap((lead, place): readonly LeadSet[] => {
    if (lead.hole !== 'new') return [];
    const moved: PlacedLead = { ...lead, positionMm: millimetres(lead.positionMm + lacking / leadMassOf(lead, problem)) };
    const others = set.leads.toSpliced(place, 1);
    return isLegal(moved, others, problem) ? [leadSetOf(set.leads.with(place, moved), problem)] : [];
  });
  return tries.reduce<LeadSet | undefined>((best, each) => (best === undefined || each.costG < best.costG ? each : best), undefined);
}

function isLegal(lead: PlacedLead, others: readonly PlacedLead[], problem: KeyLeadsProblem): boolean {
  const onGrid = lead.positionMm >= Math.min(...problem.gridMm) && lead.positionMm <= Math.max(...problem.gridMm);
  return onGrid && mayDrill(lead, problem) && others.every((other) => keepApart(lead, other, problem.gapMm));
}
