import type { KeyLeadsProblem } from '../key-leads-problem.ts';

export interface PlainLead {
  readonly x: number;
  readonly d: number;
  readonly old: boolean;
  /** Drilled out, and how wide it was found. */
  readonly b?: number;
  readonly foundB?: number;
  /** Density of another metal. */
  readonly rho?: number;
  /** The lead of an old hole taken out for another metal. */
  readonly exchanged?: boolean;
}

/** Every lead that may be set, legal by itself. */
export function everyLead(p: KeyLeadsProblem): readonly PlainLead[] {
  const apart = (a: PlainLead, b: PlainLead): boolean => Math.round(Math.abs(a.x - b.x) * 1e6) >= Math.round(((a.d + b.d) / 2 + p.gapMm) * 1e6);
  const bores = (d: number, found: number): readonly number[] => (p.trimDrillsMm ?? []).filter((b) => b > found && d - b >= 3);
  const old = p.existingHoles.flatMap(({ positionMm: x, diameterMm: d, boreMm: foundB = 0 }): readonly PlainLead[] => [
    { x, d, old: true, b: foundB, foundB }, ...bores(d, foundB).map((b) => ({ x, d, old: true, b, foundB })), ...(p.otherInserts ?? []).filter((insert) => insert.diameterMm === d).map((insert) => ({ x, d, old: true, rho: insert.densityGPerMm3, exchanged: true })),
  ]);
  const smallest = Math.min(...p.diametersMm);
  const smallestInsert = Math.min(...(p.otherInserts ?? []).map(({ diameterMm }) => diameterMm));
  const fresh = p.gridMm.flatMap((x) => [
    ...p.diametersMm.flatMap((d): readonly PlainLead[] => [{ x, d, old: false }, ...(d === smallest ? bores(d, 0).map((b) => ({ x, d, old: false, b })) : [])]),
    ...(p.otherInserts ?? []).flatMap(({ diameterMm: d, densityGPerMm3: rho }): readonly PlainLead[] => [{ x, d, old: false, rho }, ...(d === smallestInsert ? bores(d, 0).map((b) => ({ x, d, old: false, b, rho })) : [])]),
  ]).filter((lead) => old.every((hole) => apart(lead, hole)))
    .filter(({ x, d }) => (p.keepOutsMm ?? []).every(([from, to]) => x + d / 2 <= from + 1e-9 || x - d / 2 >= to - 1e-9));
  return [...old, ...fresh];
}

/** Every legal set of leads, straight from the words of the problem: no bound, no order, no table. */
export function everySet(p: KeyLeadsProblem): readonly (readonly PlainLead[])[] {
  const apart = (a: PlainLead, b: PlainLead): boolean => Math.round(Math.abs(a.x - b.x) * 1e6) >= Math.round(((a.d + b.d) / 2 + p.gapMm) * 1e6);
  const all = everyLead(p);
  const grow = (set: readonly PlainLead[], from: number): readonly (readonly PlainLead[])[] =>
    set.length === p.maxLeads ? [set] : [set, ...all.flatMap((lead, i) => (i >= from && set.every((one) => apart(one, lead)) ? grow([...set, lead], i + 1) : []))];
  return grow([], 0);
}

/** Discs of wood taken out, of metal put in, of metal drilled out: mass and inertia about the balance point, each by itself. */
function discsOf(p: KeyLeadsProblem, { x, d, b = 0, rho = p.leadDensityGPerMm3 }: PlainLead): readonly (readonly [mass: number, inertia: number])[] {
  const disc = (density: number, diameter: number): readonly [number, number] => {
    const mass = density * (Math.PI * diameter * diameter / 4) * p.keyWidthMm;
    return [mass, mass * (x * x + diameter * diameter / 8)];
  };
  return [disc(0 - p.woodDensityGPerMm3, d), disc(rho, d), disc(0 - rho, b)];
}

const sumOfDiscs = (p: KeyLeadsProblem, lead: PlainLead, part: 0 | 1): number => discsOf(p, lead).reduce((sum, disc) => sum + disc[part], 0);

/** Front weight of a set, by moments. */
export function frontWeightOf(p: KeyLeadsProblem, set: readonly PlainLead[]): number {
  return p.bareFrontWeightG + set.reduce((sum, lead) => sum + sumOfDiscs(p, lead, 0) * lead.x, 0) / p.keyFrontMm;
}

/** Cost of a set, by inertia and what the work counts for. */
export function costOf(p: KeyLeadsProblem, set: readonly PlainLead[]): number {
  const insertCost = ({ d, rho }: PlainLead): number => (rho === undefined ? 0 : p.otherInserts?.find((insert) => insert.diameterMm === d && insert.densityGPerMm3 === rho)?.costG ?? 0);
  const workOf = (lead: PlainLead): number => (p.leadCostG ?? 0) + insertCost(lead) + (lead.old ? 0 : p.newHoleCostG) + ((lead.b ?? 0) > (lead.foundB ?? 0) ? p.trimCostG ?? 0 : 0);
  const takenOut = p.existingHoles.length - set.filter(({ old, exchanged }) => old && exchanged !== true).length;
  return (p.plugCostG ?? 0) * takenOut + set.reduce((sum, lead) => sum + sumOfDiscs(p, lead, 1) / p.keyFrontMm ** 2 + workOf(lead), 0);
}
