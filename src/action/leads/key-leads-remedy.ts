import { type Grams, type GramsPerCubicMillimetre, type Millimetres, type Ratio, grams, gramsPerCubicMillimetre, millimetres, ratio } from '#units';
import { meetsTarget } from './key-leads-meets.ts';
import type { KeyLeads, KeyLeadsProblem } from './key-leads-problem.ts';

/** What of the action above the key may give way instead. */
export interface ActionAbove {
  readonly hammerWeightG?: Grams | undefined;
  readonly weightRatio?: Ratio | undefined;
}

/** Single changes, each of which by itself would bring the target within reach; absent where no change of that kind does, or it was not stated. */
export interface LeadRemedies {
  /** Most leads allowed, with all else as it is. */
  readonly maxLeads?: number;
  /** Smallest further drill, by half millimetres, for inserts as the shop sets them. */
  readonly diameterMm?: Millimetres;
  /** Least density of the inserts. */
  readonly densityGPerMm3?: GramsPerCubicMillimetre;
  /** What the target front weight would have to move by. */
  readonly targetChangeG: Grams;
  /** Change of hammer weight, with the ratio as it is, that asks for no more than the nearest leads give. */
  readonly hammerChangeG?: Grams;
  /** Change of the ratio by weights, with the hammer as it is, that does the same. Neither where nothing would be left of it. */
  readonly ratioChange?: Ratio;
}

/** Further leads tried, and the drills: those sold by half millimetres; a key some 22 mm high with 3 mm of wood above and below takes none larger. @source PRACTICE */
const MORE_LEADS = 4;
const FURTHER_DRILLS_MM = Array.from({ length: 23 }, (_, step) => millimetres(5 + step / 2));

/** Densities a shop may get: nothing heavier than tungsten. From memory, g/mm³. @source METALS-MEMORY */
const HEAVIEST_G_PER_MM3 = 0.0193;

/**
 * What would reach a target that the leads cannot reach.
 * Leads and drills are tried one by one, and only whether they reach is asked. Density, where lead alone is set: ρ = ρ_wood + (ρ_lead − ρ_wood)·(FW* ∓ tol − FW₀)/(FW_reach − FW₀), since all
 * moments grow together. The balance of moments trades front weight against the hammer: ΔSW = ΔFW/R, ΔR = ΔFW/SW.
 * @returns `undefined` when the target is met.
 * @source OWN
 */
export function leadRemediesOf(problem: KeyLeadsProblem, answer: KeyLeads, { hammerWeightG, weightRatio }: ActionAbove = {}): LeadRemedies | undefined {
  if (answer.feasible || answer.missG === undefined) return undefined;
  const short = answer.frontWeightG < problem.targetFrontWeightG;
  const change = (short ? -1 : 1) * answer.missG;
  const maxLeads = Array.from({ length: MORE_LEADS }, (_, more) => problem.maxLeads + more + 1).find((most) => meetsTarget({ ...problem, maxLeads: most }));
  const diameterMm = FURTHER_DRILLS_MM.find((drill) => meetsTarget(withDrill(problem, drill)));
  const densityGPerMm3 = densityFor(problem, answer);
  return {
    ...(maxLeads === undefined ? {} : { maxLeads }),
    ...(diameterMm === undefined ? {} : { diameterMm }),
    ...(densityGPerMm3 === undefined ? {} : { densityGPerMm3 }),
    targetChangeG: grams(change),
    ...(weightRatio === undefined || (hammerWeightG ?? Infinity) + change / weightRatio <= 0 ? {} : { hammerChangeG: grams(change / weightRatio) }),
    ...(hammerWeightG === undefined || (weightRatio ?? Infinity) + change / hammerWeightG <= 0 ? {} : { ratioChange: ratio(change / hammerWeightG) }),
  };
}

/** With one drill more: for lead, or for the shop's other metal where it sets that alone. */
function withDrill(problem: KeyLeadsProblem, diameterMm: Millimetres): KeyLeadsProblem {
  const [insert] = problem.otherInserts ?? [];
  return problem.diametersMm.length > 0 || insert === undefined ? { ...problem, diametersMm: [...problem.diametersMm, diameterMm] } : { ...problem, otherInserts: [...(problem.otherInserts ?? []), { ...insert, diameterMm }] };
}

/** `undefined` where other metals are set already, where the target lies within reach, on the wrong side of the bare key, or beyond every metal. */
function densityFor({ targetFrontWeightG, toleranceG, bareFrontWeightG, leadDensityGPerMm3, woodDensityGPerMm3, otherInserts = [] }: KeyLeadsProblem, { reachableG }: KeyLeads): GramsPerCubicMillimetre | undefined {
  if (reachableG === undefined || otherInserts.length > 0) return undefined;
  const [least, most] = reachableG;
  const short = targetFrontWeightG > most;
  if (!short && targetFrontWeightG >= least) return undefined;
  const factor = short ? (targetFrontWeightG - toleranceG - bareFrontWeightG) / (most - bareFrontWeightG) : (targetFrontWeightG + toleranceG - bareFrontWeightG) / (least - bareFrontWeightG);
  const density = woodDensityGPerMm3 + factor * (leadDensityGPerMm3 - woodDensityGPerMm3);
  return factor > 1 && density <= HEAVIEST_G_PER_MM3 ? gramsPerCubicMillimetre(density) : undefined;
}
