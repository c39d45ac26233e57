import { type Grams, type GramsPerCubicMillimetre, type Millimetres, type Ratio, grams, gramsPerCubicMillimetre, millimetres, ratio } from '#units';
import { leadBoundsOf } from './key-leads-bound.ts';
import { candidatesOf } from './key-leads-candidates.ts';
import type { KeyLeads, KeyLeadsProblem } from './key-leads-problem.ts';
import { keyLeads } from './key-leads.ts';

/** What of the action above the key may give way instead. */
export interface ActionAbove {
  readonly hammerWeightG?: Grams | undefined;
  readonly weightRatio?: Ratio | undefined;
}

/** Single changes, each of which by itself would bring the target within reach; absent where no change of that kind does, or it was not stated. */
export interface LeadRemedies {
  /** Most leads allowed, with all else as it is. */
  readonly maxLeads?: number;
  /** Smallest further drill. */
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

/** Further leads tried, and the drills: a key some 22 mm high with 3 mm of wood above and below takes no larger one. @source PRACTICE */
const MORE_LEADS = 4;
const LARGEST_DRILL_MM = 16;
const DRILL_STEP_MM = 0.1;

/** Densities a shop may get: nothing heavier than tungsten. From memory, g/mm³. @source METALS-MEMORY */
const HEAVIEST_G_PER_MM3 = 0.0193;

/**
 * What would reach a target that the leads cannot reach.
 * Leads and drills are tried one by one. Density: ρ = ρ_wood + (ρ_lead − ρ_wood)·(FW* ∓ tol − FW₀)/(FW_reach − FW₀), since all
 * moments grow together. The balance of moments trades front weight against the hammer: ΔSW = ΔFW/R, ΔR = ΔFW/SW.
 * @returns `undefined` when the target is met.
 * @source OWN
 */
export function leadRemediesOf(problem: KeyLeadsProblem, answer: KeyLeads, { hammerWeightG, weightRatio }: ActionAbove = {}): LeadRemedies | undefined {
  if (answer.feasible || answer.missG === undefined) return undefined;
  const short = answer.frontWeightG < problem.targetFrontWeightG;
  const change = (short ? -1 : 1) * answer.missG;
  const maxLeads = Array.from({ length: MORE_LEADS }, (_, more) => problem.maxLeads + more + 1).find((most) => reaches({ ...problem, maxLeads: most }));
  const largest = Math.max(0, ...problem.diametersMm);
  const drills = Array.from({ length: Math.max(0, Math.round((LARGEST_DRILL_MM - largest) / DRILL_STEP_MM)) }, (_, step) => millimetres(Math.round((largest + (step + 1) * DRILL_STEP_MM) * 1000) / 1000));
  const diameterMm = drills.find((drill) => reaches({ ...problem, diametersMm: [...problem.diametersMm, drill] }));
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

/** The reach is cheap to know and says no most of the time; only then is the problem solved. */
function reaches(problem: KeyLeadsProblem): boolean {
  const { targetFrontWeightG, toleranceG, bareFrontWeightG, keyFrontMm, maxLeads } = problem;
  const window = [(targetFrontWeightG - toleranceG - bareFrontWeightG) * keyFrontMm, (targetFrontWeightG + toleranceG - bareFrontWeightG) * keyFrontMm] as const;
  const [least, most] = leadBoundsOf(candidatesOf(problem), maxLeads, window).reach({ from: 0, leads: maxLeads });
  if (window[0] > most || window[1] < least) return false;
  const solved = keyLeads(problem);
  return solved.ok && solved.value.feasible;
}

/** `undefined` where the target lies within reach, on the wrong side of the bare key, or beyond every metal. */
function densityFor({ targetFrontWeightG, toleranceG, bareFrontWeightG, leadDensityGPerMm3, woodDensityGPerMm3 }: KeyLeadsProblem, { reachableG }: KeyLeads): GramsPerCubicMillimetre | undefined {
  if (reachableG === undefined) return undefined;
  const [least, most] = reachableG;
  const short = targetFrontWeightG > most;
  if (!short && targetFrontWeightG >= least) return undefined;
  const factor = short ? (targetFrontWeightG - toleranceG - bareFrontWeightG) / (most - bareFrontWeightG) : (targetFrontWeightG + toleranceG - bareFrontWeightG) / (least - bareFrontWeightG);
  const density = woodDensityGPerMm3 + factor * (leadDensityGPerMm3 - woodDensityGPerMm3);
  return factor > 1 && density <= HEAVIEST_G_PER_MM3 ? gramsPerCubicMillimetre(density) : undefined;
}
