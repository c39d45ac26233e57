import { type Millimetres, type Ratio, millimetres, ratio } from '#units';
import { along, cross, dot, from, turned } from '../plane.ts';
import type { Assembly } from './assembly.ts';
import { type Pose, jackCentreAt } from './pose.ts';

/** Lever arms and ratios as they are at one position. */
export interface Rates {
  /** Balance point, and wippen centre, to the line of the force at the capstan. */
  readonly keyBackMm: Millimetres;
  readonly wippenHeelMm: Millimetres;
  /** Wippen centre to the line of the force at the roller; while the jack trips, what of the wippen's turn still arrives there. */
  readonly wippenJackMm: Millimetres;
  readonly rollerMm: Millimetres;
  /** Hammer centre to the strike point, level. */
  readonly hammerMm: Millimetres;
  readonly keyRatio: Ratio;
  readonly wippenRatio: Ratio;
  readonly hammerRatio: Ratio;
  /** Rise of the hammer for travel of the measuring point. */
  readonly actionRatio: Ratio;
  /** Sliding at capstan and roller for a millimetre of travel of the measuring point. */
  readonly capstanSliding: Ratio;
  readonly rollerSliding: Ratio;
}

/**
 * Lever arms, ratios and sliding at a position.
 * Speeds along the common normal agree at each contact: ω_w/ω_k = p_k/p_w, ω_h·p_h = ω_w·(p of the jack centre) + ω_j·(p of the
 * contact about it); ω_j = ω_w while the jack stands in the wippen, and −ω_w·x_J/x_T while its toe, x_T from its centre, is held.
 * Rise is upward, travel along the arc of the key.
 * @source ARONHOLD-KENNEDY
 */
export function ratesAt(assembly: Assembly, pose: Pose, keyFrontMm: Millimetres): Rates {
  const heelNormal = turned(assembly.heelNormal, pose.wippen);
  const topNormal = turned(assembly.topNormal, pose.jack);
  const capstan = along(turned(assembly.capstan, pose.key), heelNormal, assembly.capstanRadiusMm);
  const heel = from(assembly.wippen, along(assembly.balance, capstan));
  const roller = along(turned(assembly.roller, pose.hammer), topNormal, -assembly.rollerRadiusMm);
  const centre = jackCentreAt(assembly, pose.wippen);
  const onJack = from(centre, along(assembly.hammer, roller));
  const carried = from(assembly.wippen, centre);
  const jackSpeed = jackSpeedOf(assembly, pose, carried.xMm);
  const [keyBack, wippenHeel] = [cross(capstan, heelNormal), cross(heel, heelNormal)];
  const wippenJack = cross(carried, topNormal) + jackSpeed * cross(onJack, topNormal);
  const rollerArm = cross(roller, topNormal);
  const hammerArm = turned(assembly.strike, pose.hammer).xMm;
  const wippenSpeed = keyBack / wippenHeel;
  const hammerSpeed = (wippenSpeed * wippenJack) / rollerArm;
  const slid = dot(roller, topNormal) * hammerSpeed - wippenSpeed * (dot(carried, topNormal) + jackSpeed * dot(onJack, topNormal));
  return {
    keyBackMm: millimetres(keyBack), wippenHeelMm: millimetres(Math.abs(wippenHeel)), wippenJackMm: millimetres(Math.abs(wippenJack)), rollerMm: millimetres(rollerArm), hammerMm: millimetres(hammerArm),
    keyRatio: ratio(keyBack / keyFrontMm), wippenRatio: ratio(wippenJack / wippenHeel), hammerRatio: ratio(hammerArm / rollerArm), actionRatio: ratio((hammerSpeed * hammerArm) / keyFrontMm),
    capstanSliding: ratio(Math.abs(dot(capstan, heelNormal) - wippenSpeed * dot(heel, heelNormal)) / keyFrontMm),
    rollerSliding: ratio(Math.abs(slid) / keyFrontMm),
  };
}

/** Turning speed of the jack for one of the wippen. */
function jackSpeedOf({ jack }: Assembly, pose: Pose, carriedMm: number): number {
  if (jack === undefined || pose.jack === pose.wippen) return 1;
  return 0 - carriedMm / turned(jack.toe, pose.jack).xMm;
}
