import { grams, gramsPerCubicMillimetre, millimetres } from '#units';
import type { KeyLeadsProblem } from '../key-leads-problem.ts';

/** Places from one to another by a step. */
export function gridOf(from: number, to: number, step: number): readonly number[] {
  return Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, place) => Math.round((from + place * step) * 1000) / 1000);
}

/** Bare numbers of a question; what is left out is an invented key of the usual size. */
export interface PlainQuestion {
  readonly a?: number;
  readonly gap?: number;
  readonly bare?: number;
  readonly target: number;
  readonly tolerance?: number;
  readonly most?: number;
  readonly grid?: readonly number[];
  readonly drills?: readonly number[];
  readonly old?: readonly (readonly [positionMm: number, diameterMm: number, boreMm?: number])[];
  readonly trims?: readonly number[];
  readonly inserts?: readonly (readonly [diameterMm: number, densityGPerMm3: number, costG: number])[];
  /** What a lead, a plug and drilling out count for. */
  readonly bench?: readonly [leadG: number, plugG: number, trimG: number];
  readonly newHole?: number;
  readonly keepOuts?: readonly (readonly [number, number])[];
}

/** A question from bare numbers. */
export function questionOf({ a = 225, gap = 3, bare = 0, target, tolerance = 0.25, most = 4, grid = gridOf(40, 205, 1), drills = [9.5, 11.1, 12.7], old = [], newHole = 50, keepOuts = [], trims = [], inserts = [], bench: [lead, plug, trim] = [0, 0, 0] }: PlainQuestion): KeyLeadsProblem {
  return {
    keyFrontMm: millimetres(a), keyWidthMm: millimetres(13), gapMm: millimetres(gap), bareFrontWeightG: grams(bare), targetFrontWeightG: grams(target), toleranceG: grams(tolerance),
    maxLeads: most, gridMm: grid.map(millimetres), diametersMm: drills.map(millimetres), newHoleCostG: grams(newHole),
    existingHoles: old.map(([positionMm, diameterMm, boreMm]) => ({ positionMm: millimetres(positionMm), diameterMm: millimetres(diameterMm), ...(boreMm === undefined ? {} : { boreMm: millimetres(boreMm) }) })),
    leadCostG: grams(lead), plugCostG: grams(plug), trimCostG: grams(trim), trimDrillsMm: trims.map(millimetres),
    otherInserts: inserts.map(([diameterMm, density, costG]) => ({ diameterMm: millimetres(diameterMm), densityGPerMm3: gramsPerCubicMillimetre(density), costG: grams(costG) })),
    keepOutsMm: keepOuts.map(([from, to]) => [millimetres(from), millimetres(to)] as const),
    leadDensityGPerMm3: gramsPerCubicMillimetre(0.01134), woodDensityGPerMm3: gramsPerCubicMillimetre(0.00045),
  };
}
