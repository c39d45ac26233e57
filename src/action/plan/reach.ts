import { type Grams, type Millimetres, grams, millimetres } from '#units';
import { type LeadBed, leadMomentOf } from '../leads/lead.ts';
import type { FrontReach } from './plan-key.ts';

/** A key that is to be leaded, and what the shop allows. */
export interface LeadAllowance extends LeadBed {
  /** Without any lead. */
  readonly bareFrontWeightG: Grams;
  readonly keyFrontMm: Millimetres;
  /** Balance point to the front edge. */
  readonly keyFrontLengthMm: Millimetres;
  readonly drillMm: Millimetres;
  readonly mostLeads: number;
  /** Wood left between two holes, and before the front edge. */
  readonly gapMm: Millimetres;
  readonly keepOuts: readonly { readonly fromMm: Millimetres; readonly toMm: Millimetres }[];
}

/**
 * Front weights a key can be leaded to with leads of one size: none at all, and as many as are allowed as far forward as they go.
 * The greatest is exact for one size: each lead lies as far forward as keep-outs and the lead before it let it.
 * @source OWN
 */
export function frontReachOf(key: LeadAllowance): FrontReach {
  const moment = foremostOf(key).reduce((sum, positionMm) => sum + leadMomentOf({ positionMm, diameterMm: key.drillMm }, key), 0);
  return { leastG: key.bareFrontWeightG, mostG: grams(key.bareFrontWeightG + moment / key.keyFrontMm) };
}

/** Places of leads as far forward as they go, in front of the balance point; fewer than allowed where the key is full. */
export function foremostOf({ keyFrontLengthMm, drillMm, mostLeads, gapMm, keepOuts }: LeadAllowance): readonly Millimetres[] {
  const half = drillMm / 2;
  const places: Millimetres[] = [];
  let next = keyFrontLengthMm - gapMm - half;
  while (places.length < mostLeads && next > 0) {
    const barred = keepOuts.find(({ fromMm, toMm }) => next + half > fromMm && next - half < toMm);
    if (barred === undefined) {
      places.push(millimetres(next));
      next -= drillMm + gapMm;
    } else {
      next = barred.fromMm - half;
    }
  }
  return places;
}
