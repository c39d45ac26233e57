import { type Degrees, type Millimetres, type Newtons, type NewtonsPerMillimetre, degrees, newtons, newtonsPerMillimetre } from '#units';

/** A note where it crosses its bridge. Heights from one flat datum, upwards; lengths along that datum. */
export interface BearingNote {
  /** Of one string. */
  readonly tensionN: Newtons;
  readonly strings: number;
  readonly speakingLengthMm: Millimetres;
  /** Bridge to rear rest, hitch pin or plate. */
  readonly backLengthMm: Millimetres;
  readonly frontHeightMm: Millimetres;
  readonly bridgeHeightMm: Millimetres;
  readonly rearHeightMm: Millimetres;
}

export interface Bearing {
  readonly frontDeg: Degrees;
  readonly rearDeg: Degrees;
  readonly totalDeg: Degrees;
  /** Of all strings of the note; down is positive. */
  readonly forceN: Newtons;
  /** Force gained for each millimetre the bridge rises. */
  readonly stringStiffnessNPerMm: NewtonsPerMillimetre;
}

/** π/180. */
export const RADIANS_PER_DEGREE = Math.PI / 180;

/**
 * Down bearing of a note: front angle a = atan((h_b − h_f)/L), rear angle b = atan((h_b − h_r)/L_r), total a + b,
 * force F = n·T·(sin a + sin b), and what a millimetre of bridge height is worth,
 * dF/dh_b = n·T·(cos³a/L + cos³b/L_r) > 0. Millimetres, newtons, degrees.
 * A negative angle lifts; a note may bear down as a whole and still lift on one side. Tension taken as the same on both
 * sides. Ignores the side force of staggered pins, and the bend of stiff wire over the bridge (about √(E·I/T), 4 mm).
 * @source VARIGNON-1687
 */
export function bearingOf(note: BearingNote): Bearing {
  const front = sideOf(note.bridgeHeightMm - note.frontHeightMm, note.speakingLengthMm);
  const rear = sideOf(note.bridgeHeightMm - note.rearHeightMm, note.backLengthMm);
  const pull = note.strings * note.tensionN;
  return {
    frontDeg: degrees(front.angle / RADIANS_PER_DEGREE),
    rearDeg: degrees(rear.angle / RADIANS_PER_DEGREE),
    totalDeg: degrees((front.angle + rear.angle) / RADIANS_PER_DEGREE),
    forceN: newtons(pull * (front.sine + rear.sine)),
    stringStiffnessNPerMm: newtonsPerMillimetre(pull * (front.rate + rear.rate)),
  };
}

/** Angle of one side, its sine, and how fast the sine grows with the rise: cos³/length. */
function sideOf(rise: number, length: number): { readonly angle: number; readonly sine: number; readonly rate: number } {
  const along = Math.hypot(length, rise);
  return { angle: Math.atan2(rise, length), sine: rise / along, rate: (length / along) ** 2 / along };
}

/** Angles of a note: before the bridge, behind it, together. */
export const bearingSides = ['front', 'rear', 'total'] as const;
export type BearingSide = (typeof bearingSides)[number];

/** The sides on which a note lifts instead of bearing down: a fact, not a judgement. */
export function negativeSidesOf(bearing: Pick<Bearing, 'frontDeg' | 'rearDeg' | 'totalDeg'>): readonly BearingSide[] {
  return bearingSides.filter((side) => angleOf(bearing, side) < 0);
}

/** The angle of one side, or of both together. */
export function angleOf({ frontDeg, rearDeg, totalDeg }: Pick<Bearing, 'frontDeg' | 'rearDeg' | 'totalDeg'>, side: BearingSide): Degrees {
  return { front: frontDeg, rear: rearDeg, total: totalDeg }[side];
}
