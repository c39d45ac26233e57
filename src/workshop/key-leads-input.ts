import { type ActionAbove, type KeyLeadsQuestion, type Lead, NO_SHIFTS, type PlanFigures, type PlanKey, leadMomentOf, leadsOffKey, meetingLeadsOf, planFiguresOf, wideBores } from '#action';
import { type KeyColour, type KeyNumber, type QuantityName, colourOf, compassOf, keysOf, leadNumbers } from '#instrument';
import { sumOf } from '#numerics';
import { type Grams, type Millimetres, grams, millimetres } from '#units';
import { type LeadRules, type UsualRule, gridBetween, keepOutsOf, leadRulesOf } from './key-leads-usual.ts';
import { shiftsOf } from './plan-shifts.ts';
import { type SizesAt, leadsAt, sizesAt } from './plan-sizes.ts';
import { type PlanMaterial, touchPlanInputOf } from './touch-plan.ts';

/** What the leads of a piano are worked out from; without an intent only front weights noted as planned are aimed at. */
export type KeyLeadsMaterial = Omit<PlanMaterial, 'intent'> & { readonly intent: PlanMaterial['intent'] | null };

/** Why the leads of a key cannot be worked out; words under `leads.missing.<name>`. */
const leadsMissing = ['noneNoted', 'frontWeight', 'arm', 'width', 'length', 'halfLead', 'wideBore', 'holesMeet', 'offKey', 'target'] as const;
export type LeadsMissing = (typeof leadsMissing)[number];

/** What was taken for granted, and for which keys; words under `leads.assumed.<name>`. */
export interface LeadsAssumption {
  readonly what: UsualRule | 'noLeadsHere' | 'targetPlanned' | 'targetReckoned' | 'newTop';
  readonly keys: readonly KeyNumber[];
}

/** A key whose leads can be worked out, with what the result is held against. */
export interface LeadedKey {
  readonly key: KeyNumber;
  readonly colour: KeyColour;
  readonly question: KeyLeadsQuestion;
  /** Balance point to the front edge, and to the back end where it was measured. */
  readonly keyFrontLengthMm: Millimetres;
  readonly keyBackLengthMm?: Millimetres;
  readonly measuredFrontWeightG: Grams;
  /** What new key tops change of it. */
  readonly topChangeG: Grams;
  readonly above: ActionAbove;
  /** Effective mass of the whole action as planned and with the leads as they lie; absent where one of its parts is not known. */
  readonly mass?: NonNullable<PlanFigures['mass']>;
  readonly distanceRatio?: number;
}

export interface GatheredLeads {
  readonly rules: LeadRules;
  readonly keys: readonly LeadedKey[];
  readonly missing: readonly { readonly what: LeadsMissing; readonly keys: readonly KeyNumber[] }[];
  readonly assumed: readonly LeadsAssumption[];
}

interface Gathering {
  readonly material: KeyLeadsMaterial;
  readonly found: SizesAt;
  readonly planned: SizesAt;
  readonly plans: ReadonlyMap<KeyNumber, PlanKey>;
  readonly rules: LeadRules;
  readonly areLeadsNoted: boolean;
}

/**
 * Gathers readings, terms and the planned touch into what the leads of every key are worked out from.
 *
 * FW₀ = FW − Σ m·x/a over the leads found + what new key tops change; the leads found are the old holes. The target is the front
 * weight noted as planned, else the one the planned touch needs. Where no lead is noted in a key but leads are noted in others,
 * the key is taken as having none; where none is noted at all, nothing is worked out, since old holes would be drilled through.
 * @source OWN balance of moments; PRACTICE rules where none is stated
 */
export function keyLeadsInputOf(material: KeyLeadsMaterial): GatheredLeads {
  const { instrument, readings, cycle, terms, intent } = material;
  const compass = compassOf(instrument);
  const [found, planned] = [sizesAt(readings, cycle, 'found'), sizesAt(readings, cycle, 'planned')];
  const old = keysOf(compass).flatMap((key) => leadsAt(found, key));
  const { rules, usual } = leadRulesOf(terms, old.map(({ diameterMm }) => diameterMm));
  const plans = intent === null ? [] : touchPlanInputOf({ ...material, intent }).keys;
  const gathering: Gathering = { material, found, planned, rules, plans: new Map(plans.map((plan) => [plan.key, plan])), areLeadsNoted: old.length > 0 };
  const tried = keysOf(compass).map((key) => ({ key, answer: leadedKeyOf(gathering, key, colourOf(compass, key)) }));
  const keys = tried.flatMap(({ answer }) => (typeof answer === 'string' ? [] : [answer]));
  const missing = leadsMissing.map((what) => ({ what, keys: tried.flatMap(({ key, answer }) => (answer === what ? [key] : [])) }));
  return { rules, keys, missing: missing.filter((each) => each.keys.length > 0), assumed: assumedOf(gathering, keys, usual) };
}

function leadedKeyOf(gathering: Gathering, key: KeyNumber, colour: KeyColour): LeadedKey | LeadsMissing {
  const { found, rules, material: { terms } } = gathering;
  if (!gathering.areLeadsNoted) return 'noneNoted';
  const [front, width, length] = [found.ofColour(colour, 'keyFrontMm'), found.ofColour(colour, 'keyWidthMm'), found.ofColour(colour, 'keyFrontLengthMm')];
  if (front === undefined || front <= 0) return 'arm';
  if (width === undefined || width <= 0) return 'width';
  if (length === undefined) return 'length';
  const back = found.ofColour(colour, 'keyBackLengthMm');
  const leads = leadsAt(found, key);
  const fault = faultOf(found, key, leads, { keyFrontLengthMm: millimetres(length), ...(back === undefined ? {} : { keyBackLengthMm: millimetres(back) }) });
  if (fault !== undefined) return fault;
  const weighed = found.ofKey(key, 'frontWeightG');
  if (weighed === undefined) return 'frontWeight';
  const plan = planOf(gathering, key);
  const target = gathering.planned.ofKey(key, 'frontWeightG') ?? plan?.figures.frontWeightG;
  if (target === undefined) return 'target';
  const bed = { keyWidthMm: millimetres(width), leadDensityGPerMm3: rules.leadDensityGPerMm3, woodDensityGPerMm3: rules.woodDensityGPerMm3 };
  const topChange = plan?.figures.top?.frontWeightChangeG ?? 0;
  const bare = weighed - sumOf(leads.map((lead) => leadMomentOf(lead, bed))) / front + topChange;
  const ends = { frontMm: length, backMm: back, capstanMm: found.ofColour(colour, 'keyBackMm') };
  return {
    key, colour, keyFrontLengthMm: millimetres(length), measuredFrontWeightG: grams(weighed), topChangeG: grams(topChange),
    ...(back === undefined ? {} : { keyBackLengthMm: millimetres(back) }),
    question: {
      key, ...bed, keyFrontMm: millimetres(front), gapMm: rules.gapMm, bareFrontWeightG: grams(bare), targetFrontWeightG: grams(target), toleranceG: rules.toleranceG,
      maxLeads: rules.maxLeads, ...insertsOf(rules), gridMm: gridOf(bare > target + rules.toleranceG, ends, rules), existingHoles: leads, newHoleCostG: rules.newHoleCostG,
      leadCostG: rules.leadCostG, plugCostG: rules.plugCostG, trimCostG: rules.trimCostG, trimDrillsMm: rules.trimDrillsMm,
      keepOutsMm: keepOutsOf(terms, ends, rules.gapMm),
    },
    ...aboveOf(plan),
  };
}

/** What the shop sets: lead, or another metal alone. */
function insertsOf({ drillsMm, insert }: LeadRules): Pick<KeyLeadsQuestion, 'diametersMm' | 'otherInserts'> {
  if (insert === undefined) return { diametersMm: drillsMm };
  return { diametersMm: [], otherInserts: drillsMm.map((diameterMm) => ({ diameterMm, densityGPerMm3: insert.densityGPerMm3, costG: grams(0) })) };
}

/** New holes go in front of the balance point; behind it only where the key without leads is too heavy at the front. */
function gridOf(isTooHeavy: boolean, { frontMm, backMm, capstanMm }: { readonly frontMm: number; readonly backMm: number | undefined; readonly capstanMm: number | undefined }, { gridMm }: LeadRules): readonly Millimetres[] {
  return gridBetween(isTooHeavy ? -(backMm ?? capstanMm ?? 0) : 0, frontMm, gridMm);
}

function aboveOf(plan: { readonly plan: PlanKey; readonly figures: PlanFigures } | undefined): Pick<LeadedKey, 'above' | 'mass' | 'distanceRatio'> {
  if (plan === undefined) return { above: {} };
  const { hammerWeightG, weightRatio, distanceRatio, mass } = plan.figures;
  return { above: { hammerWeightG, weightRatio }, distanceRatio, ...(mass === undefined ? {} : { mass }) };
}

function planOf({ plans, material: { terms } }: Gathering, key: KeyNumber): { readonly plan: PlanKey; readonly figures: PlanFigures } | undefined {
  const plan = plans.get(key);
  return plan === undefined ? undefined : { plan, figures: planFiguresOf(plan, terms === null ? NO_SHIFTS : shiftsOf(terms)) };
}

/** What is wrong with the leads as noted. */
function faultOf(found: SizesAt, key: KeyNumber, leads: readonly Lead[], reach: Parameters<typeof leadsOffKey>[1]): LeadsMissing | undefined {
  const isHalf = leadNumbers.some((number) => {
    const has = (size: 'PositionMm' | 'DiameterMm' | 'BoreMm' | 'DensityGPerCm3'): boolean => found.ofKey(key, `lead${String(number)}${size}` as QuantityName) !== undefined;
    return has('PositionMm') !== has('DiameterMm') || ((has('BoreMm') || has('DensityGPerCm3')) && !has('DiameterMm'));
  });
  if (isHalf) return 'halfLead';
  if (wideBores(leads).length > 0) return 'wideBore';
  if (meetingLeadsOf(leads).length > 0) return 'holesMeet';
  return leadsOffKey(leads, reach).length > 0 ? 'offKey' : undefined;
}

function assumedOf({ planned }: Gathering, keys: readonly LeadedKey[], usual: readonly UsualRule[]): readonly LeadsAssumption[] {
  const where = (what: LeadsAssumption['what'], holds: (key: LeadedKey) => boolean): LeadsAssumption => ({ what, keys: keys.filter(holds).map(({ key }) => key) });
  const isPlanned = ({ key }: LeadedKey): boolean => planned.ofKey(key, 'frontWeightG') !== undefined;
  return [
    ...usual.map((what) => where(what, () => true)),
    where('noLeadsHere', ({ question }) => question.existingHoles.length === 0),
    where('targetPlanned', isPlanned),
    where('targetReckoned', (key) => !isPlanned(key)),
    where('newTop', ({ topChangeG }) => topChangeG !== 0),
  ].filter((each) => each.keys.length > 0);
}
