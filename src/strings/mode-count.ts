import { type SegmentStiffness, type StiffSegment, segmentStiffnessOf } from './stiff-segment.ts';

/** What a string says at one frequency and tension. */
export interface ModeCount {
  /** Modes below this frequency. */
  readonly below: number;
  /** Modes below this frequency if the far end were clamped. */
  readonly clampedBelow: number;
  /** Stiffness left at the slope of the far end: nought at a mode, falling with frequency, with a pole at each mode of the clamped string. */
  readonly residual: number;
}

export interface StringEnds {
  /** Turning stiffness of either end, N·m; 0 is a pinned end, a very large figure a clamped one. */
  readonly endStiffnessNm?: number;
}

/**
 * How many modes of a string of several pieces lie below a frequency, by the count of Wittrick and Williams:
 * J = Σ clamped modes of the pieces + negative pivots of the assembled dynamic stiffness. It cannot miss a mode.
 * Elimination runs from end to end with one 2 × 2 block; both ends are held, and may turn against `endStiffnessNm`.
 * @source WITTRICK-WILLIAMS-1971
 */
export function countModes(segments: readonly StiffSegment[], tensionN: number, angularHz: number, { endStiffnessNm = 0 }: StringEnds = {}): ModeCount {
  let below = 0;
  let left: Block = { yy: Infinity, yTheta: 0, thetaTheta: endStiffnessNm };
  for (const segment of segments) {
    const piece = segmentStiffnessOf(segment, tensionN, angularHz);
    const pivot = plus(left, { yy: piece.yy, yTheta: -piece.yTheta, thetaTheta: piece.thetaTheta });
    below += piece.clampedModes + negativesOf(pivot);
    left = eliminated(pivot, piece);
  }
  const residual = left.thetaTheta + endStiffnessNm;
  return { below: below + (residual < 0 ? 1 : 0), clampedBelow: below, residual };
}

/** A symmetric 2 × 2 block of deflection and slope at one point; an infinite `yy` holds the point. */
interface Block {
  readonly yy: number;
  readonly yTheta: number;
  readonly thetaTheta: number;
}

const plus = (a: Block, b: Block): Block => ({ yy: a.yy + b.yy, yTheta: a.yTheta + b.yTheta, thetaTheta: a.thetaTheta + b.thetaTheta });

function negativesOf({ yy, yTheta, thetaTheta }: Block): number {
  if (yy === Infinity) return thetaTheta < 0 ? 1 : 0;
  const second = thetaTheta - (yTheta * yTheta) / yy;
  return (yy < 0 ? 1 : 0) + (second < 0 ? 1 : 0);
}

/** What the right end of a piece feels once its left end is eliminated: K_rr − K_rl·P⁻¹·K_lr. */
function eliminated(pivot: Block, piece: SegmentStiffness): Block {
  const { crossYy, crossThetaY, crossThetaTheta } = piece;
  if (pivot.yy === Infinity) {
    const p = pivot.thetaTheta;
    return { yy: piece.yy - crossThetaY ** 2 / p, yTheta: piece.yTheta - (crossThetaY * crossThetaTheta) / p, thetaTheta: piece.thetaTheta - crossThetaTheta ** 2 / p };
  }
  const factor = pivot.yTheta / pivot.yy;
  const second = pivot.thetaTheta - factor * pivot.yTheta;
  const [toY, toTheta] = [crossThetaY - factor * crossYy, crossThetaTheta + factor * crossThetaY];
  return {
    yy: piece.yy - crossYy ** 2 / pivot.yy - toY ** 2 / second,
    yTheta: piece.yTheta + (crossYy * crossThetaY) / pivot.yy - (toY * toTheta) / second,
    thetaTheta: piece.thetaTheta - crossThetaY ** 2 / pivot.yy - toTheta ** 2 / second,
  };
}
