import type { KeyColour, KeyNumber } from '#instrument';
import { medianOf } from '#numerics';
import { type Degrees, type GramMillimetres, type Grams, type Millimetres, gramMillimetres, grams } from '#units';
import type { Register } from '../register.ts';
import { type UprightTouch, uprightTouchOf } from '../upright-touch.ts';
import { type UprightFinding, uprightFindingsOf } from './findings.ts';

/** Arms of one colour of an upright, mm. */
export interface UprightArms {
  readonly keyFrontMm: Millimetres;
  readonly keyBackMm: Millimetres;
  readonly wippenHeelMm: Millimetres;
  readonly wippenJackMm: Millimetres;
  readonly buttMm: Millimetres;
  readonly hammerMm: Millimetres;
}

/** What was read of one key; weights with the damper off. */
export interface UprightReadings {
  readonly downWeightG?: Grams;
  readonly upWeightG?: Grams;
  readonly frontWeightG?: Grams;
  readonly hammerWeightG?: Grams;
  readonly wippenWeightG?: Grams;
  /** What the spoon lifts, at the capstan. */
  readonly damperG?: Grams;
  readonly springTorqueGMm?: GramMillimetres;
}

export interface UprightInputKey {
  readonly key: KeyNumber;
  readonly colour: KeyColour;
  readonly register: Register['name'];
  readonly read: UprightReadings;
  /** Balance weight the intent asks for; absent without one, or without friction where a down weight is asked. */
  readonly askedBalanceG?: Grams;
}

export interface UprightInput {
  readonly keys: readonly UprightInputKey[];
  readonly arms: Partial<Readonly<Record<KeyColour, UprightArms>>>;
  /** Hammer from upright, away from the string above nought. */
  readonly tiltDeg?: Degrees | undefined;
  /** Spring and damper asked of every key; absent: each is compared with the median read in its register. */
  readonly asked: { readonly springTorqueGMm?: GramMillimetres; readonly damperG?: Grams };
  /** Grams at the key front beyond which something is told. */
  readonly toleranceG: Grams;
  readonly upWeightMinG?: Grams | undefined;
}

/** What spring and damper should be, and what they are compared with. */
export interface UprightAim {
  readonly springTorqueGMm?: GramMillimetres;
  readonly damperG?: Grams;
}

/** What a key will weigh with spring and damper as they should be, and the front weight that gives the balance asked. */
export interface UprightPlan {
  readonly springTorqueGMm: GramMillimetres;
  readonly frontWeightG: Grams;
  readonly frontWeightChangeG: Grams;
  readonly balanceWeightG: Grams;
  readonly downWeightG: Grams;
  readonly upWeightG: Grams;
}

export interface AnalysedUpright extends UprightInputKey {
  readonly aim: UprightAim;
  readonly balanceWeightG?: Grams;
  readonly frictionG?: Grams;
  /** By the parts, damper off; absent where one of them is not known. */
  readonly byParts?: UprightTouch;
  /** What the damper adds at the key front once the spoon lifts it. */
  readonly damperShareG?: Grams;
  readonly downWithDamperG?: Grams;
  /** What the spring alone takes at the key front. */
  readonly springShareG?: Grams;
  /** Spring and weight of the hammer about its centre: what brings it back from the string, less friction of the centre. */
  readonly returnTorqueGMm?: GramMillimetres;
  readonly plan?: UprightPlan;
  readonly findings: readonly UprightFinding[];
}

/** Balance of an upright key from its parts, damper off; absent where one is not known. */
export function uprightPartsOf({ read: { frontWeightG, hammerWeightG, wippenWeightG, springTorqueGMm } }: UprightInputKey, arms: UprightArms | undefined, tiltDeg: Degrees | undefined): UprightTouch | undefined {
  if (arms === undefined || tiltDeg === undefined || frontWeightG === undefined || hammerWeightG === undefined || wippenWeightG === undefined || springTorqueGMm === undefined) return undefined;
  return uprightTouchOf({ ...arms, frontWeightG, hammerMassG: hammerWeightG, wippenWeightG, springTorqueGMm, damperG: grams(0), tiltDeg });
}

/**
 * Touch of every key of an upright: what weighing gives beside what the parts give, the shares of hammer-return spring and
 * damper at the key front, what is found, and the front weight the balance asked takes.
 * BW = (DW + UW)/2, F = (DW − UW)/2; spring K·W/r_b·τ, damper K·D; τ_return = τ + m·L·sin θ. Dampers off.
 * The plan changes spring and lead alone: FW' = FW + BW_parts − BW_asked + K·W/r_b·(τ_aim − τ), shown weights BW_asked ± F.
 * @source OWN virtual work about the balance point
 */
export function analyseUpright(input: UprightInput): readonly AnalysedUpright[] {
  return input.keys.map((key) => {
    const aim = aimOf(key, input);
    const worked = workedOf(key, input);
    const plan = planOf({ ...key, ...worked, aim }, input);
    return { ...key, ...worked, aim, ...(plan === undefined ? {} : { plan }), findings: uprightFindingsOf({ ...key, ...worked, aim }, input) };
  });
}

function aimOf({ register }: UprightInputKey, { keys, asked }: UprightInput): UprightAim {
  const medianRead = (name: 'springTorqueGMm' | 'damperG'): number | undefined => {
    const read = keys.flatMap((key) => (key.register === register && key.read[name] !== undefined ? [key.read[name]] : []));
    return read.length === 0 ? undefined : medianOf(read);
  };
  const [spring, damper] = [asked.springTorqueGMm ?? medianRead('springTorqueGMm'), asked.damperG ?? medianRead('damperG')];
  return { ...(spring === undefined ? {} : { springTorqueGMm: gramMillimetres(spring) }), ...(damper === undefined ? {} : { damperG: grams(damper) }) };
}

type Worked = Omit<AnalysedUpright, keyof UprightInputKey | 'aim' | 'plan' | 'findings'>;

function workedOf(key: UprightInputKey, { arms, tiltDeg }: UprightInput): Worked {
  const { downWeightG, upWeightG, damperG, springTorqueGMm, hammerWeightG } = key.read;
  const own = arms[key.colour];
  const byParts = uprightPartsOf(key, own, tiltDeg);
  const damperShareG = own === undefined || damperG === undefined ? undefined : grams((own.keyBackMm / own.keyFrontMm) * damperG);
  return {
    ...(downWeightG === undefined || upWeightG === undefined ? {} : { balanceWeightG: grams((downWeightG + upWeightG) / 2), frictionG: grams((downWeightG - upWeightG) / 2) }),
    ...(byParts === undefined ? {} : { byParts }),
    ...(damperShareG === undefined ? {} : { damperShareG }),
    ...(damperShareG === undefined || downWeightG === undefined ? {} : { downWithDamperG: grams(downWeightG + damperShareG) }),
    ...(own === undefined || springTorqueGMm === undefined ? {} : { springShareG: grams(frontPerTorqueOf(own) * springTorqueGMm) }),
    ...(own === undefined || springTorqueGMm === undefined || hammerWeightG === undefined || tiltDeg === undefined ? {} : { returnTorqueGMm: gramMillimetres(springTorqueGMm + hammerWeightG * own.hammerMm * Math.sin((tiltDeg * Math.PI) / 180)) }),
  };
}

/** Grams at the key front for each g·mm about the hammer centre: K·W/r_b. @source OWN */
export function frontPerTorqueOf({ keyBackMm, keyFrontMm, wippenJackMm, wippenHeelMm, buttMm }: UprightArms): number {
  return ((keyBackMm / keyFrontMm) * wippenJackMm) / wippenHeelMm / buttMm;
}

function planOf({ read: { frontWeightG, springTorqueGMm }, colour, aim, byParts, frictionG, askedBalanceG }: UprightInputKey & Worked & { readonly aim: UprightAim }, { arms }: UprightInput): UprightPlan | undefined {
  const own = arms[colour];
  if (own === undefined || byParts === undefined || frictionG === undefined || askedBalanceG === undefined || frontWeightG === undefined || springTorqueGMm === undefined) return undefined;
  const aimedG = aim.springTorqueGMm ?? springTorqueGMm;
  const changeG = byParts.balanceWeightG - askedBalanceG + frontPerTorqueOf(own) * (aimedG - springTorqueGMm);
  return {
    springTorqueGMm: aimedG, frontWeightG: grams(frontWeightG + changeG), frontWeightChangeG: grams(changeG),
    balanceWeightG: askedBalanceG, downWeightG: grams(askedBalanceG + frictionG), upWeightG: grams(askedBalanceG - frictionG),
  };
}
