import type { Issue } from '#result';
import type { Grams, GramsPerCubicMillimetre, Millimetres } from '#units';
import { type Lead, type LeadBed, meetingLeadsOf } from './lead.ts';
import { wideBores } from './on-key.ts';

/** An insert of another metal that the shop has. */
export interface OtherInsert {
  readonly diameterMm: Millimetres;
  readonly densityGPerMm3: GramsPerCubicMillimetre;
  /** What it costs beyond a lead, in grams of effective mass. */
  readonly costG: Grams;
}

/** What work at the bench counts for, in grams of effective mass; what is left out counts nothing. */
export interface BenchCosts {
  /** Each lead, in an old hole or a new one: few pieces rather than many. */
  readonly leadCostG?: Grams | undefined;
  /** Each old hole whose lead is taken out: the hole is plugged, or gets an insert of another metal. */
  readonly plugCostG?: Grams | undefined;
  /** Each lead that is drilled out. */
  readonly trimCostG?: Grams | undefined;
}

/** What is asked of the leads of one key. All positions from the balance point, toward the player above nought. */
export interface KeyLeadsProblem extends LeadBed, BenchCosts {
  /** Balance point to the measuring point. */
  readonly keyFrontMm: Millimetres;
  /** Wood that must stand between two leads, and between a new hole and an old one. */
  readonly gapMm: Millimetres;
  /** Front weight with every hole plugged with wood. */
  readonly bareFrontWeightG: Grams;
  readonly targetFrontWeightG: Grams;
  /** Either side of the target. */
  readonly toleranceG: Grams;
  readonly maxLeads: number;
  /** Where the middle of a new hole may be. */
  readonly gridMm: readonly Millimetres[];
  /** Drills there are for new holes. */
  readonly diametersMm: readonly Millimetres[];
  /** Drills there are for drilling a lead or insert out through its middle; none: none is drilled out. */
  readonly trimDrillsMm?: readonly Millimetres[] | undefined;
  readonly otherInserts?: readonly OtherInsert[] | undefined;
  /** Holes that are in the key, with or without lead, by their true drilled diameters; a bore is of the lead in it, which may become wider, not narrower. */
  readonly existingHoles: readonly Lead[];
  /** What a new hole costs, in grams of effective mass: 50 reuses old holes first, 0 looks at inertia alone. */
  readonly newHoleCostG: Grams;
  /** Stretches of the key that no new hole may reach into. */
  readonly keepOutsMm?: readonly (readonly [Millimetres, Millimetres])[] | undefined;
  /** Steps of the search after which the best so far is answered, not proven. */
  readonly nodeLimit?: number | undefined;
}

/** A lead of the answer, with the hole it goes into. */
export interface PlacedLead extends Lead {
  readonly hole: 'existing' | 'new';
}

/** Leads with what they come to. */
export interface LeadSet {
  readonly leads: readonly PlacedLead[];
  readonly frontWeightG: Grams;
  /** Effective mass of the leads at the measuring point, plus what holes, pieces, plugs and drilling out count for. */
  readonly costG: Grams;
}

/** The answer for one key. When it is not feasible, the leads are those that come nearest to the target. */
export interface KeyLeads extends LeadSet {
  readonly feasible: boolean;
  /** Old holes that get no lead. */
  readonly plugs: readonly Lead[];
  /** True when the search is complete: no legal set is cheaper, or none reaches the target. */
  readonly proven: boolean;
  /** The same leads with one new hole moved so that the target is met exactly; absent where that is not legal or there is no new hole. */
  readonly finish?: LeadSet;
  /** Least and largest front weight that legal sets give; only when not feasible. */
  readonly reachableG?: readonly [Grams, Grams];
  /** By how much the nearest set misses the tolerance; only when not feasible. */
  readonly missG?: Grams;
}

/** Steps of the search after which it gives up proving, unless the problem says another number. */
export const NODE_LIMIT = 50_000;

/** What is wrong with a problem beyond its single fields: inserts lighter than wood, a bore as wide as its lead, old holes that meet, stretches the wrong way round. */
export function keyLeadsIssues(problem: KeyLeadsProblem): readonly Issue[] {
  const { leadDensityGPerMm3, woodDensityGPerMm3, existingHoles, keepOutsMm = [] } = problem;
  const density: readonly Issue[] = leadDensityGPerMm3 > woodDensityGPerMm3 ? [] : [{
    code: 'order', path: 'leadDensityGPerMm3', given: leadDensityGPerMm3, allowed: `more than the wood, ${String(woodDensityGPerMm3)}`, params: { above: woodDensityGPerMm3 },
  }];
  const meeting = meetingLeadsOf(existingHoles).map(([first, second]): Issue => {
    const [a, b] = [existingHoles[first], existingHoles[second]];
    const apart = a === undefined || b === undefined ? 0 : (a.diameterMm + b.diameterMm) / 2;
    return { code: 'conflict', path: `existingHoles[${String(second)}].positionMm`, given: b?.positionMm, allowed: `at least ${String(apart)} mm from existingHoles[${String(first)}]: two holes cannot meet`, params: { reason: 'holesMeet', min: apart, other: first } };
  });
  const light = (problem.otherInserts ?? []).flatMap(({ densityGPerMm3 }, place): readonly Issue[] => (densityGPerMm3 > woodDensityGPerMm3 ? [] : [{
    code: 'order', path: `otherInserts[${String(place)}].densityGPerMm3`, given: densityGPerMm3, allowed: `more than the wood, ${String(woodDensityGPerMm3)}`, params: { above: woodDensityGPerMm3 },
  }]));
  const turned = keepOutsMm.flatMap(([from, to], place): readonly Issue[] =>
    from <= to ? [] : [{ code: 'order', path: `keepOutsMm[${String(place)}][1]`, given: to, allowed: `at least ${String(from)}, where the stretch begins`, params: { min: from } }]);
  return [...density, ...light, ...wideBores(existingHoles, 'existingHoles'), ...meeting, ...turned];
}
