import type { KeyLeadsProblem } from '../key-leads-problem.ts';

export interface PlainLead {
  readonly x: number;
  readonly d: number;
  readonly old: boolean;
}

/** Every legal set of leads, straight from the words of the problem: no bound, no order, no table. */
export function everySet(p: KeyLeadsProblem): readonly (readonly PlainLead[])[] {
  const apart = (a: PlainLead, b: PlainLead): boolean => Math.round(Math.abs(a.x - b.x) * 1e6) >= Math.round(((a.d + b.d) / 2 + p.gapMm) * 1e6);
  const old = p.existingHoles.map(({ positionMm: x, diameterMm: d }) => ({ x, d, old: true }));
  const fresh = p.gridMm.flatMap((x) => p.diametersMm.map((d) => ({ x, d, old: false })))
    .filter((lead) => old.every((hole) => apart(lead, hole)))
    .filter(({ x, d }) => (p.keepOutsMm ?? []).every(([from, to]) => x + d / 2 <= from + 1e-9 || x - d / 2 >= to - 1e-9));
  const all: readonly PlainLead[] = [...old, ...fresh];
  const grow = (set: readonly PlainLead[], from: number): readonly (readonly PlainLead[])[] =>
    set.length === p.maxLeads ? [set] : [set, ...all.flatMap((lead, i) => (i >= from && set.every((one) => apart(one, lead)) ? grow([...set, lead], i + 1) : []))];
  return grow([], 0);
}

const massOf = (p: KeyLeadsProblem, d: number): number => (p.leadDensityGPerMm3 - p.woodDensityGPerMm3) * (Math.PI * d * d / 4) * p.keyWidthMm;

/** Front weight of a set, by moments. */
export function frontWeightOf(p: KeyLeadsProblem, set: readonly PlainLead[]): number {
  return p.bareFrontWeightG + set.reduce((sum, { x, d }) => sum + massOf(p, d) * x, 0) / p.keyFrontMm;
}

/** Cost of a set, by inertia and new holes. */
export function costOf(p: KeyLeadsProblem, set: readonly PlainLead[]): number {
  return set.reduce((sum, { x, d, old }) => sum + massOf(p, d) * (x * x + d * d / 8) / p.keyFrontMm ** 2 + (old ? 0 : p.newHoleCostG), 0);
}
