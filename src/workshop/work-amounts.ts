import { type KeyParts, type KeyTouch, type Lead, type LeadBed, type Levers, type WorkAmount, leadMassOf, leadMomentOf, leverRatiosOf, shiftedLeversOf } from '#action';
import type { ActionTerms, BenchOperation } from '#instrument';
import { grams, millimetres, ratio } from '#units';
import type { FrictionExcess } from './friction-excess.ts';

/** What a job can do at a key, by its name. */
export type KeyAmount = WorkAmount & { readonly operation: BenchOperation };

/** Cleaned pins and treated rollers lose this much of the friction above the usual; a new bushing or roller loses all. @source PRACTICE */
export const LIGHT_SHARE = 0.5;

/**
 * What the jobs on friction take away, from where the friction above the usual sits. What renews is offered everywhere, if only to
 * be counted where everything is replaced; the others where there is something to take away.
 * @source OWN · PRACTICE share of the lighter jobs
 */
export function frictionAmountsOf(excess: FrictionExcess | undefined): readonly KeyAmount[] {
  const { keyG, wippenG, hammerG, rollerG } = excess ?? { keyG: 0, wippenG: 0, hammerG: 0, rollerG: 0 };
  const off = (operation: BenchOperation, amountG: number): KeyAmount => ({ operation, changeG: grams(0 - amountG) });
  const lighter = (operation: BenchOperation, amountG: number): readonly KeyAmount[] => (amountG > 0 ? [off(operation, amountG)] : []);
  return [
    ...lighter('cleanKeyPins', LIGHT_SHARE * keyG), ...lighter('easeKeyBushing', keyG), off('rebushKey', keyG),
    off('repinWippen', wippenG), off('repinHammer', hammerG),
    ...lighter('treatRoller', LIGHT_SHARE * rollerG), off('replaceRoller', rollerG),
  ];
}

/** How far capstan and roller of one key can be moved and still meet what they press on; mm. @source PRACTICE */
const CAPSTAN_MM = 2;
const ROLLER_MM = 1;

/**
 * What moving capstan or roller does to the ratio by weights: R·(R_d′/R_d − 1), R_d by distance from the lever arms moved.
 * @source OWN · PRACTICE how far
 */
export function ratioAmountsOf(weightRatio: number, levers: Levers): readonly KeyAmount[] {
  const moved = (capstanTowardPlayerMm: number, rollerOutMm: number): number => {
    const shifted = shiftedLeversOf(levers, { capstanTowardPlayerMm: millimetres(capstanTowardPlayerMm), rollerOutMm: millimetres(rollerOutMm), jackFollows: false });
    return weightRatio * (leverRatiosOf(shifted).actionRatio / leverRatiosOf(levers).actionRatio - 1);
  };
  if (Math.min(levers.keyBackMm, levers.wippenHeelMm) <= CAPSTAN_MM || levers.rollerMm <= ROLLER_MM) return [];
  return [
    { operation: 'moveCapstan', fromRatio: ratio(moved(CAPSTAN_MM, 0)), toRatio: ratio(moved(-CAPSTAN_MM, 0)) },
    { operation: 'moveRoller', fromRatio: ratio(moved(0, ROLLER_MM)), toRatio: ratio(moved(0, -ROLLER_MM)) },
  ];
}

/** What may come off a hammer by trimming it, and how near to its neighbours a new one is made; g. @source PRACTICE */
const TRIM_G = 0.5;
const NEW_HAMMER_G = 1;

/** What trimming and changing a hammer does to its weight; a hammer with no felt to spare is not trimmed. @source PRACTICE */
export function hammerAmountsOf({ hammerWeightG }: KeyParts, usualHere: number, isFeltSpent: boolean): readonly KeyAmount[] {
  const away = usualHere - hammerWeightG;
  const change: KeyAmount = { operation: 'changeHammer', fromG: grams(away - NEW_HAMMER_G), toG: grams(away + NEW_HAMMER_G) };
  return isFeltSpent || hammerWeightG <= 2 * TRIM_G ? [change] : [{ operation: 'trimHammer', fromG: grams(0 - TRIM_G), toG: grams(0) }, change];
}

/** What is known of a key that may be leaded. */
export interface LeadingKey {
  readonly figures: KeyTouch['figures'];
  readonly keyFrontMm?: number | undefined;
  readonly bed?: LeadBed | undefined;
  /** Leads noted in this key, and whether leads were noted at all. */
  readonly leads: readonly Lead[];
  readonly areLeadsNoted: boolean;
  readonly terms: Pick<ActionTerms, 'drillsMm' | 'mostFrontWeightG'> | null;
}

/** What one lead does to the front weight where neither drill nor leads are known; g. @source PRACTICE */
export const USUAL_LEAD_G = 12;
/** Where a new lead goes at the farthest, of the way to the measuring point; and nearest to the balance point, mm. @source PRACTICE */
const FOREMOST_SHARE = 0.85;
const NEAREST_MM = 40;

/**
 * What one lead more, moved or out does to the front weight; any amount up to that, since a lead goes nearer to the balance point or
 * is drilled out. A key already as heavy in front as is allowed gets none.
 * @source OWN · PRACTICE lengths
 */
export function leadAmountsOf(key: LeadingKey): readonly KeyAmount[] {
  const { figures: { frontWeightG }, terms } = key;
  const allowed = terms?.mostFrontWeightG == null || frontWeightG === undefined ? Infinity : terms.mostFrontWeightG - frontWeightG.value;
  const most = Math.min(newLeadOf(key), allowed);
  const out = outOf(key);
  const shift = moveOf(key, allowed);
  return [
    ...(most > 0 ? [{ operation: 'addLead', fromG: grams(0), toG: grams(most) } as const] : []),
    ...(shift === undefined ? [] : [{ operation: 'moveLead', fromG: grams(shift.from), toG: grams(shift.to) } as const]),
    ...(out > 0 ? [{ operation: 'removeLead', fromG: grams(0 - out), toG: grams(0) } as const] : []),
  ];
}

function newLeadOf({ bed, terms }: LeadingKey): number {
  const drill = Math.max(0, ...(terms?.drillsMm ?? []));
  return bed === undefined || drill === 0 ? USUAL_LEAD_G : FOREMOST_SHARE * leadMassOf({ diameterMm: millimetres(drill) }, bed);
}

/** Front weight the heaviest lead noted gives; where none were noted on the whole keyboard, what one usually gives, as far as there is front weight. */
function outOf({ figures: { frontWeightG }, keyFrontMm, bed, leads, areLeadsNoted }: LeadingKey): number {
  if (!areLeadsNoted) return Math.min(USUAL_LEAD_G, Math.max(0, frontWeightG?.value ?? USUAL_LEAD_G));
  if (bed === undefined || keyFrontMm === undefined) return 0;
  return Math.max(0, ...leads.map((lead) => leadMomentOf(lead, bed) / keyFrontMm));
}

function moveOf({ keyFrontMm, bed, leads }: LeadingKey, allowed: number): { readonly from: number; readonly to: number } | undefined {
  if (bed === undefined || keyFrontMm === undefined || leads.length === 0) return undefined;
  const by = (toMm: number): readonly number[] => leads.map((lead) => (leadMassOf(lead, bed) * (toMm - lead.positionMm)) / keyFrontMm);
  const [from, to] = [Math.min(0, ...by(NEAREST_MM)), Math.min(allowed, Math.max(0, ...by(FOREMOST_SHARE * keyFrontMm)))];
  return to <= from ? undefined : { from, to };
}
