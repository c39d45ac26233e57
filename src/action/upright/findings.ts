import { type Grams, grams } from '#units';
import { type JudgedUpright, type UprightInput, frontPerTorqueOf } from './upright-key.ts';

/** What can be found of spring, damper and touch of an upright key; words under `upright.finding.<code>`. */
export type UprightFindingCode = 'noReturn' | 'springWeak' | 'springStrong' | 'damperHeavy' | 'damperLight' | 'partsDiffer' | 'slow';

export interface UprightFinding {
  readonly code: UprightFindingCode;
  /** As read, in the unit of what it is: g·mm of springs and of what brings the hammer back, grams of all else. */
  readonly figure: number;
  readonly limit: number;
  /** Departure at the key front. */
  readonly byG: Grams;
}

/** What is found of one key, graver first; a departure is told beyond the tolerance at the key front. @source OWN */
export function uprightFindingsOf(key: JudgedUpright, input: UprightInput): readonly UprightFinding[] {
  return [...returnOf(key), ...springOf(key, input), ...damperOf(key, input), ...partsOf(key, input), ...slowOf(key, input)];
}

function returnOf({ returnTorqueGMm }: JudgedUpright): readonly UprightFinding[] {
  return returnTorqueGMm === undefined || returnTorqueGMm > 0 ? [] : [{ code: 'noReturn', figure: returnTorqueGMm, limit: 0, byG: grams(0) }];
}

function springOf({ read: { springTorqueGMm: read }, aim: { springTorqueGMm: aim }, colour }: JudgedUpright, { arms, toleranceG }: UprightInput): readonly UprightFinding[] {
  const own = arms[colour];
  if (read === undefined || aim === undefined || own === undefined) return [];
  return beyond((read - aim) * frontPerTorqueOf(own), toleranceG, { figure: read, limit: aim, high: 'springStrong', low: 'springWeak' });
}

function damperOf({ read: { damperG: read }, aim: { damperG: aim }, colour }: JudgedUpright, { arms, toleranceG }: UprightInput): readonly UprightFinding[] {
  const own = arms[colour];
  if (read === undefined || aim === undefined || own === undefined) return [];
  return beyond((read - aim) * (own.keyBackMm / own.keyFrontMm), toleranceG, { figure: read, limit: aim, high: 'damperHeavy', low: 'damperLight' });
}

function partsOf({ balanceWeightG, byParts }: JudgedUpright, { toleranceG }: UprightInput): readonly UprightFinding[] {
  if (balanceWeightG === undefined || byParts === undefined) return [];
  return beyond(balanceWeightG - byParts.balanceWeightG, toleranceG, { figure: balanceWeightG, limit: byParts.balanceWeightG, high: 'partsDiffer', low: 'partsDiffer' });
}

function slowOf({ read: { upWeightG } }: JudgedUpright, { upWeightMinG }: UprightInput): readonly UprightFinding[] {
  if (upWeightG === undefined || upWeightMinG === undefined || upWeightG >= upWeightMinG) return [];
  return [{ code: 'slow', figure: upWeightG, limit: upWeightMinG, byG: grams(upWeightG - upWeightMinG) }];
}

function beyond(byG: number, toleranceG: number, { figure, limit, high, low }: { readonly figure: number; readonly limit: number; readonly high: UprightFindingCode; readonly low: UprightFindingCode }): readonly UprightFinding[] {
  return Math.abs(byG) <= toleranceG + HAIR_G ? [] : [{ code: byG > 0 ? high : low, figure, limit, byG: grams(byG) }];
}

/** What is left of sums of decimals: nothing is outside by less. */
const HAIR_G = 1e-9;
