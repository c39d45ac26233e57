import { type Degrees, type Millimetres, millimetres } from '#units';
import { type Levers, leverRatiosOf } from './levers.ts';

/** Contacts moved along the action. */
export interface LeverShift {
  /** Capstan toward the player: nearer to the balance point, farther from the wippen centre. */
  readonly capstanTowardPlayerMm: Millimetres;
  /** Roller away from the hammer centre. */
  readonly rollerOutMm: Millimetres;
  /** Whether the jack is set after the roller, toward the wippen centre, and its arm with it. */
  readonly jackFollows: boolean;
}

/**
 * Lever arms with capstan line and roller moved.
 * b − c, w_c + c, r + p, and w_j − p where the jack follows; c the capstan toward the player, p the roller away from the
 * hammer centre, mm. Small shifts, all contacts on one level; line, dip and blow are to be checked again afterwards.
 * @source OWN
 */
export function shiftedLeversOf(levers: Levers, { capstanTowardPlayerMm: capstan, rollerOutMm: roller, jackFollows }: LeverShift): Levers {
  return {
    ...levers,
    keyBackMm: millimetres(levers.keyBackMm - capstan),
    wippenHeelMm: millimetres(levers.wippenHeelMm + capstan),
    wippenJackMm: millimetres(levers.wippenJackMm - (jackFollows ? roller : 0)),
    rollerMm: millimetres(levers.rollerMm + roller),
  };
}

/** What a roller of another diameter does, as the action stands. */
export interface RollerSize {
  readonly hammerLiftMm: Millimetres;
  /** How far the capstan is to be let down for the blow as before. */
  readonly capstanDownMm: Millimetres;
}

/**
 * What a roller thicker by δ does: its contact comes down by δ/2 and lifts the hammer by δ/2·H; δ/2/W at the capstan
 * takes that back. mm; δ below nought for a thinner one.
 * @source OWN
 */
export function rollerSizeEffectOf(levers: Levers, thickerMm: Millimetres): RollerSize {
  const { hammerRatio, wippenRatio } = leverRatiosOf(levers);
  return { hammerLiftMm: millimetres((thickerMm / 2) * hammerRatio), capstanDownMm: millimetres(thickerMm / 2 / wippenRatio) };
}

/**
 * Lever arm of a roller whose contact lies q below the shank line and its shank φ above level.
 * r·cos φ − q·sin φ with the force upright, mm.
 * @source OWN
 */
export function rollerArmOf({ rollerMm, depthMm, shankDeg }: { readonly rollerMm: Millimetres; readonly depthMm: Millimetres; readonly shankDeg: Degrees }): Millimetres {
  const shank = (shankDeg * Math.PI) / 180;
  return millimetres(rollerMm * Math.cos(shank) - depthMm * Math.sin(shank));
}
