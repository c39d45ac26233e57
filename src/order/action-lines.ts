import { hammerCurveOf, leadMassOf } from '#action';
import { type ActionTerms, type Compass, type Reading, keyCountOf, noteNameOf } from '#instrument';
import type { Say } from '#text';
import { formatMeasure, grams, gramsPerCubicMillimetre } from '#units';
import type { LeadPlan, PlannedLead, PlannedLeads } from '#workshop';
import type { PurchaseLine } from './purchase-lines.ts';

interface Telling {
  readonly say: Say;
  readonly locale: string;
}

const NO_WOOD = gramsPerCubicMillimetre(0);

/**
 * Leads to buy for a plan: those of new holes, and of holes that get another metal; reused ones are left out. Counted by diameter of
 * the drill, metal and mass. Mass ρ·π/4·d²·w of the piece before it is drilled out; not told where the width of the key is not known.
 * @source OWN mass of a cylinder
 */
export function leadLinesOf({ keys, rules }: LeadPlan, { say, locale }: Telling): readonly PurchaseLine[] {
  const counts = new Map<string, PurchaseLine>();
  for (const key of keys) {
    for (const lead of key.leads.filter(({ hole, isExchanged }) => hole === 'new' || isExchanged)) {
      const name = nameOf(lead, key, rules.leadDensityGPerMm3, { say, locale });
      const id = `${String(lead.diameterMm)} ${name}`;
      counts.set(id, { what: 'leads', name, sizeMm: lead.diameterMm, amount: (counts.get(id)?.amount ?? 0) + 1, unit: 'piece' });
    }
  }
  return [...counts.values()].sort((a, b) => (a.sizeMm ?? 0) - (b.sizeMm ?? 0) || a.name.localeCompare(b.name));
}

function nameOf(lead: PlannedLead, { bed, colour }: PlannedLeads, usual: number, { say, locale }: Telling): string {
  const metal = lead.densityGPerMm3 === undefined || lead.densityGPerMm3 === usual ? 'lead' : 'other';
  const density = formatMeasure((lead.densityGPerMm3 ?? usual) * 1000, { locale, decimals: 2 });
  const { boreMm: _bore, ...solid } = lead;
  const mass = bed === undefined ? 'none' : formatMeasure(leadMassOf(solid, { ...bed, woodDensityGPerMm3: NO_WOOD }), { locale, decimals: 1 });
  return say('parts.line.lead', { metal, density, mass, colour });
}

/** Hammers to make or buy, note by note: the weights kept as planned; where none are, those of the curve the shop stated. @source OWN */
export function hammerLinesOf(readings: readonly Reading[], cycle: number, compass: Compass, { say, locale, terms }: Telling & { readonly terms: Pick<ActionTerms, 'hammerCurve' | 'hammerAnchors'> | null }): readonly PurchaseLine[] {
  const planned = readings
    .filter((one) => one.cycle === cycle && one.state === 'planned' && one.quantity === 'hammerWeightG' && one.value !== null)
    .sort((a, b) => a.index - b.index).map(({ index, value }) => ({ key: index, weightG: value ?? 0 }));
  const weights = planned.length > 0 ? planned : statedCurve(terms, keyCountOf(compass));
  return weights.map(({ key, weightG }) => ({ what: 'hammers', name: say('parts.line.hammer', { note: noteNameOf(compass, key), key, weight: formatMeasure(weightG, { locale, decimals: 2 }) }), sizeMm: null, amount: 1, unit: 'piece' }));
}

function statedCurve(terms: Pick<ActionTerms, 'hammerCurve' | 'hammerAnchors'> | null, keys: number): readonly { readonly key: number; readonly weightG: number }[] {
  const [low, middle, high] = terms?.hammerCurve === 'anchors' ? terms.hammerAnchors.map(({ key, weightG }) => ({ key, weightG: grams(weightG) })) : [];
  if (low === undefined || middle === undefined || high === undefined) return [];
  return hammerCurveOf([low, middle, high], keys).map((weightG, index) => ({ key: index + 1, weightG }));
}
