import { type Degrees, type Millimetres, type Newtons, degrees, millimetres, newtons } from '#units';
import { type Bearing, type BearingNote, RADIANS_PER_DEGREE, bearingOf } from './bearing.ts';

/** What a note bears with its bridge at another height. */
export interface Recap extends Bearing {
  readonly bridgeHeightMm: Millimetres;
  readonly bridgeChangeMm: Millimetres;
  readonly forceChangeN: Newtons;
  readonly angleChangeDeg: Degrees;
}

/**
 * A note with its bridge raised (positive) or planed (negative), everything else kept, tension too.
 * Exact; for small changes ΔF ≈ n·T·Δh·(1/L + 1/L_r), most of it from the short back length.
 * @source VARIGNON-1687
 */
export function recappedOf(note: BearingNote, bridgeChangeMm: Millimetres): Recap {
  return comparedAt(note, millimetres(note.bridgeHeightMm + bridgeChangeMm));
}

/** A note recapped to a total angle. @source EUCLID-III-21, through {@link bridgeHeightFor} */
export function recappedTo(note: BearingNote, targetTotalDeg: Degrees): Recap {
  return comparedAt(note, bridgeHeightFor(note, targetTotalDeg));
}

function comparedAt(note: BearingNote, bridgeHeightMm: Millimetres): Recap {
  const before = bearingOf(note);
  const after = bearingOf({ ...note, bridgeHeightMm });
  return {
    ...after,
    bridgeHeightMm,
    bridgeChangeMm: millimetres(bridgeHeightMm - note.bridgeHeightMm),
    forceChangeN: newtons(after.forceN - before.forceN),
    angleChangeDeg: degrees(after.totalDeg - before.totalDeg),
  };
}

/**
 * The bridge height at which a note bears a total angle θ: the one height, for every θ between −180° and 180°, since the
 * angle grows with the height from one to the other.
 * With x the height over the middle of the two rests and e half of h_f − h_r, tan(a + b) = tan θ becomes
 * sin θ·x² + cos θ·(L + L_r)·x = sin θ·(L·L_r + e²) − cos θ·e·(L − L_r), whose discriminant is
 * (cos θ·(L − L_r) − 2·e·sin θ)² + 4·L·L_r, never below nought. Of its two roots the other one bears θ − 180°.
 * Equally: the bridge stands where the circle over the two rests is seen under 180° − θ.
 * @source EUCLID-III-21
 */
export function bridgeHeightFor(note: Pick<BearingNote, 'speakingLengthMm' | 'backLengthMm' | 'frontHeightMm' | 'rearHeightMm'>, targetTotalDeg: Degrees): Millimetres {
  const { speakingLengthMm: length, backLengthMm: back, frontHeightMm, rearHeightMm } = note;
  const [sine, cosine] = [Math.sin(targetTotalDeg * RADIANS_PER_DEGREE), Math.cos(targetTotalDeg * RADIANS_PER_DEGREE)];
  const half = (frontHeightMm - rearHeightMm) / 2;
  const linear = cosine * (length + back);
  const constant = sine * (length * back + half ** 2) - cosine * half * (length - back);
  const root = Math.hypot(cosine * (length - back) - 2 * half * sine, 2 * Math.sqrt(length * back));
  const over = linear >= 0 ? (2 * constant) / (linear + root) : (root - linear) / (2 * sine);
  return millimetres((frontHeightMm + rearHeightMm) / 2 + over);
}
