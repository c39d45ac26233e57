import { type KeyTouch, type Levers, KEY_FRICTION_HIGH_G, KEY_FRICTION_LOW_G, frictionBudgetOf } from '#action';
import type { ActionTerms, Instrument } from '#instrument';
import { type Grams, type Ratio, gramMillimetres, grams, millimetres, ratio } from '#units';

/** Where friction above the usual sits, in grams at the key front. */
export interface FrictionExcess {
  readonly keyG: number;
  readonly wippenG: number;
  readonly hammerG: number;
  readonly rollerG: number;
  /** What it was told apart by. */
  readonly apart: 'stated' | 'reckoned' | 'usual';
  /** The friction of the key alone was weighed. */
  readonly isKeyWeighed: boolean;
}

/** What is known of one key. */
export interface ExcessQuestion {
  readonly touch: KeyTouch;
  readonly kind: Instrument['kind'];
  readonly levers?: Levers | undefined;
  readonly terms: Pick<ActionTerms, 'excessSits'> | null;
}

type Share = 'keyG' | 'wippenG' | 'hammerG' | 'rollerG';
type Shares = Readonly<Record<Share, number>>;

/** Friction above the usual that is still nobody's business; grams. @source OWN as for the shares of a departure */
const LEAST_EXCESS_G = 1.5;
/** Coverage factor of the expanded uncertainty. @source JCGM-100 clause 6.3.3 */
const COVERAGE = 2;

/** Sound centres and contacts: torque g·mm, coefficients, distances from the lines of centres mm, key friction g. @source PRACTICE */
const SOUND = { torqueGMm: gramMillimetres(60), friction: ratio(0.2), capstanOffsetMm: millimetres(2), rollerOffsetMm: millimetres(6), keyFrictionG: grams(2) } as const;
/** What {@link SOUND} gives on a middle key of 225, 115, 65, 96, 17, 130 mm with a hammer of 9.2 g; grams. @source OWN `frictionBudgetOf` */
const USUAL: Shares = { keyG: 2, wippenG: 0.5, hammerG: 2.7, rollerG: 4.4 };

/**
 * Estimates where the friction above the usual of a key sits, so that work on that part can take it away.
 *
 * E = F − F_usual, the bias of the weight steps in neither. A key weighed alone above 6 g has KF − 3 g of it; below, what it has above 3 g,
 * E at most; the rest sits above the key. What no weighing tells apart is put where the shop says, else spread in the proportion
 * friction has in a sound action: by this key's own levers and weights where they are known. A capstan's part counts to the rest.
 * @returns undefined where no friction was found, or none to speak of: less than 1.5 g, or than its own expanded uncertainty.
 * @source OWN · PRACTICE limits of key friction
 */
export function frictionExcessOf(question: ExcessQuestion): FrictionExcess | undefined {
  const { touch: { frictionG, correctedFrictionG, usualFrictionG, standardUncertaintyG = 0, figures: { keyFrictionG } } } = question;
  if (frictionG === undefined || usualFrictionG === undefined) return undefined;
  const excess = (correctedFrictionG ?? frictionG) - usualFrictionG;
  const alone = keyFrictionG?.value;
  const isTold = excess >= Math.max(LEAST_EXCESS_G, COVERAGE * standardUncertaintyG);
  const isKeyHigh = alone !== undefined && alone > KEY_FRICTION_HIGH_G;
  if (!isTold && !isKeyHigh) return undefined;
  const inKey = alone === undefined ? 0 : Math.max(0, isKeyHigh ? alone - KEY_FRICTION_LOW_G : Math.min(excess, alone - KEY_FRICTION_LOW_G));
  const rest = isTold ? Math.max(0, excess - inKey) : 0;
  const { shares, apart } = sharesOf(question);
  const total = shares.keyG + shares.wippenG + shares.hammerG + shares.rollerG;
  const of = (share: Share): number => (rest * shares[share]) / total;
  return { keyG: inKey + of('keyG'), wippenG: of('wippenG'), hammerG: of('hammerG'), rollerG: of('rollerG'), apart, isKeyWeighed: alone !== undefined };
}

/** In what proportion the untold rest is spread; a key that was weighed has its own already. */
function sharesOf({ touch, kind, levers, terms }: ExcessQuestion): { readonly shares: Shares; readonly apart: FrictionExcess['apart'] } {
  const isKeyWeighed = touch.figures.keyFrictionG !== undefined;
  const budget = levers === undefined ? undefined : soundBudgetOf(touch, levers);
  const spread = { ...(budget ?? USUAL), ...(isKeyWeighed ? { keyG: 0 } : {}), ...(kind === 'upright' ? { rollerG: 0 } : {}) };
  const none: Shares = { keyG: 0, wippenG: 0, hammerG: 0, rollerG: 0 };
  const sits = terms?.excessSits ?? null;
  if (sits === 'key' && !isKeyWeighed) return { shares: { ...none, keyG: 1 }, apart: 'stated' };
  if (sits === 'centres') return { shares: { ...none, wippenG: spread.wippenG, hammerG: spread.hammerG }, apart: 'stated' };
  if (sits === 'roller' && kind === 'grand') return { shares: { ...none, rollerG: 1 }, apart: 'stated' };
  return { shares: spread, apart: budget === undefined ? 'usual' : 'reckoned' };
}

/** What friction this key would have with sound centres and contacts. */
function soundBudgetOf({ figures: { hammerWeightG, wippenWeightG } }: KeyTouch, levers: Levers): Shares | undefined {
  if (hammerWeightG === undefined || wippenWeightG === undefined) return undefined;
  const weights: { readonly hammerWeightG: Grams; readonly wippenWeightG: Grams } = { hammerWeightG: hammerWeightG.value, wippenWeightG: wippenWeightG.value };
  const same = (value: Ratio): { readonly capstanFriction: Ratio; readonly rollerFriction: Ratio } => ({ capstanFriction: value, rollerFriction: value });
  return frictionBudgetOf({
    levers, ...weights, ...same(SOUND.friction), keyFrictionG: SOUND.keyFrictionG, wippenTorqueGMm: SOUND.torqueGMm, hammerTorqueGMm: SOUND.torqueGMm,
    capstanOffsetMm: SOUND.capstanOffsetMm, rollerOffsetMm: SOUND.rollerOffsetMm,
  });
}
