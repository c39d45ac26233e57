import { type Lead, type LeadBed, type LeadEffect, type PlacedLead, leadEffectOf, leadMomentOf } from '#action';
import { type ActionTerms, type Instrument, type KeyColour, type KeyNumber, type Reading, colourOf, compassOf, keysOf } from '#instrument';
import { sumOf } from '#numerics';
import { type Grams, type Millimetres, grams, millimetres } from '#units';
import { type LeadRules, keepOutsOf, leadRulesOf } from './key-leads-usual.ts';
import { type SizesAt, leadsAt, sizesAt } from './plan-sizes.ts';

/** What the leads noted as planned are read from. */
export interface LeadPlanMaterial {
  readonly instrument: Pick<Instrument, 'firstMidi' | 'lastMidi'>;
  readonly readings: readonly Reading[];
  readonly cycle: number;
  readonly terms: ActionTerms | null;
}

/** A lead as planned. */
export interface PlannedLead extends PlacedLead {
  /** Drilled out further than it was found. */
  readonly isTrimmed: boolean;
  /** Of another metal than the lead found in that hole. */
  readonly isExchanged: boolean;
}

/** The leads of one key as planned, held against those found. */
export interface PlannedLeads {
  readonly key: KeyNumber;
  readonly colour: KeyColour;
  readonly leads: readonly PlannedLead[];
  /** Old holes that get no lead. */
  readonly plugs: readonly Lead[];
  /** Something is drilled, drilled out or plugged. */
  readonly isChanged: boolean;
  /** Absent where the width of the key was not measured. */
  readonly bed?: LeadBed;
  /** What the planned leads make of the front weight weighed; absent where that or the arm of the key is not known. */
  readonly effect?: LeadEffect;
  readonly measuredFrontWeightG?: Grams;
  readonly keyFrontLengthMm?: Millimetres;
  readonly keepOutsMm: readonly (readonly [Millimetres, Millimetres])[];
}

/** All leads noted as planned, and whether the stretches kept clear are those usual or those stated. */
export interface LeadPlan {
  readonly keys: readonly PlannedLeads[];
  readonly rules: LeadRules;
  readonly areKeepOutsUsual: boolean;
}

/** A figure typed in a unit of its own comes back this near: a hole is the same hole. */
const SAME_MM = 0.005;

/**
 * The leads noted as planned, key by key: those that go into old holes, those that need new ones, and the old holes to plug.
 * A key of which no lead is noted as planned is left out; one whose first lead is noted as missing is planned without lead.
 * @source OWN
 */
export function leadPlanOf({ instrument, readings, cycle, terms }: LeadPlanMaterial): LeadPlan {
  const compass = compassOf(instrument);
  const [found, planned] = [sizesAt(readings, cycle, 'found'), sizesAt(readings, cycle, 'planned')];
  const { rules, usual } = leadRulesOf(terms, keysOf(compass).flatMap((key) => leadsAt(found, key).map(({ diameterMm }) => diameterMm)));
  const bare = new Set(readings.flatMap((one) => (one.cycle === cycle && one.state === 'planned' && one.quantity === 'lead1PositionMm' && one.outcome === 'missing' ? [one.index] : [])));
  const keys = keysOf(compass).flatMap((key): readonly PlannedLeads[] => {
    const leads = leadsAt(planned, key);
    return leads.length === 0 && !bare.has(key) ? [] : [plannedLeadsOf({ key, colour: colourOf(compass, key) }, leads, { found, rules, terms })];
  });
  return { keys, rules, areKeepOutsUsual: usual.includes('keepOutsUsual') };
}

const isSame = (one: Lead, other: Lead): boolean => Math.abs(one.positionMm - other.positionMm) < SAME_MM && Math.abs(one.diameterMm - other.diameterMm) < SAME_MM;

function plannedLeadsOf({ key, colour }: Pick<PlannedLeads, 'key' | 'colour'>, planned: readonly Lead[], { found, rules, terms }: { readonly found: SizesAt; readonly rules: LeadRules; readonly terms: ActionTerms | null }): PlannedLeads {
  const old = leadsAt(found, key);
  const leads = planned.map((lead): PlannedLead => {
    const found = old.find((one) => isSame(one, lead));
    const isExchanged = found !== undefined && found.densityGPerMm3 !== lead.densityGPerMm3;
    return { ...lead, hole: found === undefined ? 'new' : 'existing', isExchanged, isTrimmed: (lead.boreMm ?? 0) > (found?.boreMm ?? 0) + SAME_MM };
  }).toSorted((a, b) => b.positionMm - a.positionMm);
  const plugs = old.filter((one) => !planned.some((lead) => isSame(one, lead)));
  const [front, width, length] = [found.ofColour(colour, 'keyFrontMm'), found.ofColour(colour, 'keyWidthMm'), found.ofColour(colour, 'keyFrontLengthMm')];
  const bed = width === undefined ? undefined : { keyWidthMm: millimetres(width), leadDensityGPerMm3: rules.leadDensityGPerMm3, woodDensityGPerMm3: rules.woodDensityGPerMm3 };
  const weighed = found.ofKey(key, 'frontWeightG');
  return {
    key, colour, leads, plugs, isChanged: plugs.length > 0 || leads.some(({ hole, isTrimmed, isExchanged }) => hole === 'new' || isTrimmed || isExchanged),
    keepOutsMm: length === undefined ? [] : keepOutsOf(terms, { frontMm: length, backMm: found.ofColour(colour, 'keyBackLengthMm'), capstanMm: found.ofColour(colour, 'keyBackMm') }, rules.gapMm),
    ...(bed === undefined ? {} : { bed }),
    ...(weighed === undefined ? {} : { measuredFrontWeightG: grams(weighed) }),
    ...(length === undefined ? {} : { keyFrontLengthMm: millimetres(length) }),
    ...(bed === undefined || weighed === undefined || front === undefined ? {} : {
      effect: leadEffectOf({ ...bed, keyFrontMm: millimetres(front), leads, bareFrontWeightG: grams(weighed - sumOf(old.map((lead) => leadMomentOf(lead, bed))) / front) }),
    }),
  };
}
