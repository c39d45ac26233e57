import { KEY_WOOD_DENSITY_G_PER_MM3, LEAD_DENSITY_G_PER_MM3 } from '#action';
import { type ActionTerms, type InsertMetal, leadNumbers } from '#instrument';
import { type Grams, type GramsPerCubicMillimetre, type Millimetres, grams, gramsPerCubicMillimetre, millimetres } from '#units';
import { USUAL_GAP_MM } from './plan-bed.ts';

/** What a shop works to where it states nothing else. */
const usualLeadTerms = {
  /** Half an inch, the commonest lead. @source PRACTICE */
  drillMm: 12.7,
  /** @source PRACTICE */
  gapMm: USUAL_GAP_MM,
  /** As fine as a rule is read. @source PRACTICE */
  gridMm: 1,
  /** Above it the optimum leans on the light edge of the tolerance. @source OWN */
  toleranceG: 0.1,
  /** More are hardly found in a key, and the proof stays quick. @source PRACTICE */
  mostLeads: 5,
  /** Enough that no old hole is passed over for a gain of inertia. @source OWN */
  newHoleCostG: 50,
  /** One piece fewer is worth more than any inertia it adds; taking a lead out and plugging is half a new hole; drilling one out a little less. @source OWN, after the time each takes at a bench: PRACTICE */
  leadCostG: 10,
  plugCostG: 25,
  trimCostG: 20,
  /** @source PRACTICE */
  trimDrillsMm: [3, 4, 5, 6],
} as const;

/** Densities of other metals as a shop may begin with, until it asks whoever sells them; g/mm³. Tungsten in plastic is made from 10 to 11. @source METALS-MEMORY */
export const usualInsertGPerMm3: Readonly<Record<Exclude<InsertMetal, 'other'>, number>> = { bismuth: 0.0098, brass: 0.0085, tungstenPlastic: 0.0105 };

/** Either side of the balance hole, where the key bends most and the button is glued. @source PRACTICE */
const BALANCE_MM = 40;
/** Behind the front edge: the front mortise and its wood. @source PRACTICE */
const MORTISE_MM = 45;
/** Before the capstan. @source PRACTICE */
const CAPSTAN_MM = 12;
/** Beyond every key. */
const BEYOND_MM = 1000;

/** What new inserts are of where not of lead. */
export interface InsertRule {
  readonly metal: InsertMetal;
  readonly densityGPerMm3: GramsPerCubicMillimetre;
}

/** What every key of a piano is leaded by. */
export interface LeadRules {
  readonly drillsMm: readonly Millimetres[];
  readonly gapMm: Millimetres;
  readonly gridMm: Millimetres;
  readonly toleranceG: Grams;
  readonly maxLeads: number;
  readonly newHoleCostG: Grams;
  readonly leadCostG: Grams;
  readonly plugCostG: Grams;
  readonly trimCostG: Grams;
  readonly trimDrillsMm: readonly Millimetres[];
  /** Absent: new inserts are of lead. */
  readonly insert?: InsertRule;
  readonly leadDensityGPerMm3: GramsPerCubicMillimetre;
  readonly woodDensityGPerMm3: GramsPerCubicMillimetre;
}

/** Rules nobody stated, taken as usual; words under `leads.assumed.<name>`. */
export type UsualRule = 'drillsFound' | 'drillUsual' | 'gapUsual' | 'gridUsual' | 'toleranceUsual' | 'mostLeadsUsual' | 'newHoleUsual' | 'benchUsual' | 'trimUsual' | 'leadUsual' | 'insertUsual' | 'woodUsual' | 'keepOutsUsual';

/** The rules as stated, else as usual: drills as the leads found, else half an inch. No more leads than can be noted of a key. */
export function leadRulesOf(terms: ActionTerms | null, diametersFound: readonly number[]): { readonly rules: LeadRules; readonly usual: readonly UsualRule[] } {
  const stated = terms?.drillsMm ?? [];
  const found = [...new Set(diametersFound)].sort((a, b) => a - b);
  const drills = [stated, found, [usualLeadTerms.drillMm]].find((list) => list.length > 0) ?? [];
  const holds: Readonly<Record<UsualRule, boolean>> = {
    drillsFound: stated.length === 0 && found.length > 0, drillUsual: stated.length === 0 && found.length === 0,
    gapUsual: terms?.leadGapMm == null, gridUsual: terms?.leadGridMm == null, toleranceUsual: terms?.leadToleranceG == null, mostLeadsUsual: terms?.mostLeads == null,
    newHoleUsual: terms?.newHoleCostG == null, benchUsual: terms?.leadCostG == null || terms.plugCostG == null || terms.trimCostG == null, trimUsual: (terms?.trimDrillsMm ?? []).length === 0, leadUsual: terms?.leadGPerMm3 == null, insertUsual: terms?.insertMetal != null && terms.insertGPerMm3 === null, woodUsual: terms?.woodGPerMm3 == null, keepOutsUsual: (terms?.keepOuts ?? []).length === 0,
  };
  const insert = insertRuleOf(terms);
  return {
    rules: {
      ...(insert === undefined ? {} : { insert }),
      drillsMm: drills.map(millimetres), gapMm: millimetres(terms?.leadGapMm ?? usualLeadTerms.gapMm), gridMm: millimetres(terms?.leadGridMm ?? usualLeadTerms.gridMm),
      toleranceG: grams(terms?.leadToleranceG ?? usualLeadTerms.toleranceG), maxLeads: Math.min(terms?.mostLeads ?? usualLeadTerms.mostLeads, leadNumbers.length),
      newHoleCostG: grams(terms?.newHoleCostG ?? usualLeadTerms.newHoleCostG), leadCostG: grams(terms?.leadCostG ?? usualLeadTerms.leadCostG),
      plugCostG: grams(terms?.plugCostG ?? usualLeadTerms.plugCostG), trimCostG: grams(terms?.trimCostG ?? usualLeadTerms.trimCostG),
      trimDrillsMm: (terms === null || terms.trimDrillsMm.length === 0 ? usualLeadTerms.trimDrillsMm : terms.trimDrillsMm).map(millimetres),
      leadDensityGPerMm3: terms?.leadGPerMm3 == null ? LEAD_DENSITY_G_PER_MM3 : gramsPerCubicMillimetre(terms.leadGPerMm3),
      woodDensityGPerMm3: terms?.woodGPerMm3 == null ? KEY_WOOD_DENSITY_G_PER_MM3 : gramsPerCubicMillimetre(terms.woodGPerMm3),
    },
    usual: (Object.keys(holds) as UsualRule[]).filter((name) => holds[name]),
  };
}

function insertRuleOf(terms: ActionTerms | null): InsertRule | undefined {
  if (terms?.insertMetal == null) return undefined;
  const { insertMetal: metal, insertGPerMm3 } = terms;
  const density = insertGPerMm3 ?? (metal === 'other' ? undefined : usualInsertGPerMm3[metal]);
  return density === undefined ? undefined : { metal, densityGPerMm3: gramsPerCubicMillimetre(density) };
}

/** How far a key reaches, as far as it was measured. */
interface KeyEnds {
  readonly frontMm: number;
  /** Balance point to the back end. */
  readonly backMm?: number | undefined;
  /** Balance point to the capstan. */
  readonly capstanMm?: number | undefined;
}

type Stretch = readonly [Millimetres, Millimetres];
const stretch = (from: number, to: number): Stretch => [millimetres(from), millimetres(to)];

/**
 * Stretches of a key no new hole may reach into: those stated, else 40 mm either side of the balance hole, 45 mm behind the front
 * edge for the front mortise, and all from 12 mm before the capstan; always the gap at either end of the key.
 * @source PRACTICE
 */
export function keepOutsOf(terms: ActionTerms | null, { frontMm, backMm, capstanMm }: KeyEnds, gapMm: number): readonly Stretch[] {
  const stated = terms?.keepOuts ?? [];
  const usual = [stretch(-BALANCE_MM, BALANCE_MM), stretch(frontMm - MORTISE_MM, frontMm), ...(capstanMm === undefined ? [] : [stretch(-BEYOND_MM, CAPSTAN_MM - capstanMm)])];
  const ends = [stretch(frontMm - gapMm, frontMm + BEYOND_MM), ...(backMm === undefined ? [] : [stretch(-BEYOND_MM, gapMm - backMm)])];
  return [...(stated.length > 0 ? stated.map(({ fromMm, toMm }) => stretch(fromMm, toMm)) : usual), ...ends];
}

/** Places of a grid between two ends, counted from the balance point, nought left out. */
export function gridBetween(fromMm: number, toMm: number, stepMm: number): readonly Millimetres[] {
  const first = Math.ceil(fromMm / stepMm);
  const count = Math.max(0, Math.floor(toMm / stepMm) - first + 1);
  return Array.from({ length: count }, (_, index) => millimetres(Number(((first + index) * stepMm).toFixed(6)))).filter((place) => place !== 0);
}
