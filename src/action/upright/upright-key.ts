import type { KeyColour, KeyNumber } from '#instrument';
import type { Degrees, GramMillimetres, Grams, Millimetres } from '#units';
import type { Register } from '../register.ts';
import type { UprightTouch } from '../upright-touch.ts';

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

/** What was worked out of one key. */
export interface WorkedUpright {
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
}

/** One key with what it is judged by. */
export interface JudgedUpright extends UprightInputKey, WorkedUpright {
  readonly aim: UprightAim;
}

/** Grams at the key front for each g·mm about the hammer centre: K·W/r_b. @source OWN */
export function frontPerTorqueOf({ keyBackMm, keyFrontMm, wippenJackMm, wippenHeelMm, buttMm }: UprightArms): number {
  return ((keyBackMm / keyFrontMm) * wippenJackMm) / wippenHeelMm / buttMm;
}
