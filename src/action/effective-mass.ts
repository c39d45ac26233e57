import { sumOf } from '#numerics';
import { type GramSquareMillimetres, type Grams, type Millimetres, gramSquareMillimetres, grams } from '#units';
import { type Lead, type LeadBed, leadInertiaOf } from './leads/lead.ts';
import { type Levers, leverRatiosOf } from './levers.ts';

/** A key as its inertia needs it: a straight bar of even section, and its leads. */
export interface KeyBar extends LeadBed {
  /** Of the key without its leads. */
  readonly keyMassG: Grams;
  /** Balance point to the front edge. */
  readonly keyFrontLengthMm: Millimetres;
  /** Balance point to the back end. */
  readonly keyBackLengthMm: Millimetres;
  readonly leads: readonly Lead[];
}

/**
 * Moment of inertia of a key about its balance point.
 * I = M·(f³ + b³)/(3·(f + b)) + Σ m·(x² + d²/8); M key without leads, f and b its lengths before and behind the balance
 * point, g·mm². Takes the key as a thin bar of even section: head, thinned back and buttons are not seen apart.
 * @source OWN a thin bar turned about a point within it, and parallel axes
 */
export function keyInertiaOf({ keyMassG, keyFrontLengthMm: front, keyBackLengthMm: back, leads, ...bed }: KeyBar): GramSquareMillimetres {
  const bar = (keyMassG * (front ** 3 + back ** 3)) / (3 * (front + back));
  return gramSquareMillimetres(bar + sumOf(leads.map((lead) => leadInertiaOf(lead, bed))));
}

/** A hammer with its shank. */
export interface HammerBody {
  /** The head at the strike radius. */
  readonly hammerHeadG: Grams;
  /** The shank, and its length from the hammer centre. */
  readonly shankG: Grams;
  readonly shankLengthMm: Millimetres;
}

/**
 * Moment of inertia of hammer and shank about the hammer centre.
 * I = m·L² + s·l²/3; m head, L hammer centre to strike point, s shank, l its length. Takes the head as a point.
 * @source OWN
 */
export function hammerInertiaOf({ hammerHeadG, shankG, shankLengthMm }: HammerBody, hammerMm: Millimetres): GramSquareMillimetres {
  return gramSquareMillimetres(hammerHeadG * hammerMm ** 2 + (shankG * shankLengthMm ** 2) / 3);
}

/**
 * What hammer and shank weigh at the strike point, shank level: SW = m + s·l/(2·L).
 * @source OWN moment of an even shank about its end
 */
export function hammerWeightOf({ hammerHeadG, shankG, shankLengthMm }: HammerBody, hammerMm: Millimetres): Grams {
  return grams(hammerHeadG + (shankG * shankLengthMm) / (2 * hammerMm));
}

/** Where the inertia felt at the key front sits, as masses at the measuring point. */
export interface EffectiveMass {
  readonly keyG: Grams;
  readonly wippenG: Grams;
  readonly hammerG: Grams;
  readonly effectiveMassG: Grams;
}

/**
 * The mass at the measuring point that would be as hard to set moving as the whole action.
 * m_eff = I_key/a² + I_w·(K/w_c)² + I_h·(R/L)²; grams. Rigid parts, levers as at half stroke, jack still under the
 * roller. It compares before with after and key with key; it is no measure of what a player feels.
 * @source OWN kinetic energy of the three levers at one speed of the key front
 */
export function effectiveMassOf(levers: Levers, inertias: { readonly keyGMm2: GramSquareMillimetres; readonly wippenGMm2: GramSquareMillimetres; readonly hammerGMm2: GramSquareMillimetres }): EffectiveMass {
  const { keyRatio, actionRatio } = leverRatiosOf(levers);
  const keyG = grams(inertias.keyGMm2 / levers.keyFrontMm ** 2);
  const wippenG = grams(inertias.wippenGMm2 * (keyRatio / levers.wippenHeelMm) ** 2);
  const hammerG = grams(inertias.hammerGMm2 * (actionRatio / levers.hammerMm) ** 2);
  return { keyG, wippenG, hammerG, effectiveMassG: grams(keyG + wippenG + hammerG) };
}
