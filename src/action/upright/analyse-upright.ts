import { medianOf } from '#numerics';
import { type Degrees, type GramMillimetres, type Grams, gramMillimetres, grams } from '#units';
import { type UprightTouch, uprightTouchOf } from '../upright-touch.ts';
import { type UprightFinding, uprightFindingsOf } from './findings.ts';
import { type JudgedUpright, type UprightAim, type UprightArms, type UprightInput, type UprightInputKey, type WorkedUpright, frontPerTorqueOf } from './upright-key.ts';

/** What a key will weigh with spring and damper as they should be, and the front weight that gives the balance asked. */
export interface UprightPlan {
  readonly springTorqueGMm: GramMillimetres;
  readonly frontWeightG: Grams;
  readonly frontWeightChangeG: Grams;
  readonly balanceWeightG: Grams;
  readonly downWeightG: Grams;
  readonly upWeightG: Grams;
}

export interface AnalysedUpright extends JudgedUpright {
  readonly plan?: UprightPlan;
  readonly findings: readonly UprightFinding[];
}

/** Balance of an upright key from its parts, damper off; absent where one is not known. */
function uprightPartsOf({ read: { frontWeightG, hammerWeightG, wippenWeightG, springTorqueGMm } }: UprightInputKey, arms: UprightArms | undefined, tiltDeg: Degrees | undefined): UprightTouch | undefined {
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

function workedOf(key: UprightInputKey, { arms, tiltDeg }: UprightInput): WorkedUpright {
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

function planOf({ read: { frontWeightG, springTorqueGMm }, colour, aim, byParts, frictionG, askedBalanceG }: JudgedUpright, { arms }: UprightInput): UprightPlan | undefined {
  const own = arms[colour];
  if (own === undefined || byParts === undefined || frictionG === undefined || askedBalanceG === undefined || frontWeightG === undefined || springTorqueGMm === undefined) return undefined;
  const aimedG = aim.springTorqueGMm ?? springTorqueGMm;
  const changeG = byParts.balanceWeightG - askedBalanceG + frontPerTorqueOf(own) * (aimedG - springTorqueGMm);
  return {
    springTorqueGMm: aimedG, frontWeightG: grams(frontWeightG + changeG), frontWeightChangeG: grams(changeG),
    balanceWeightG: askedBalanceG, downWeightG: grams(askedBalanceG + frictionG), upWeightG: grams(askedBalanceG - frictionG),
  };
}
