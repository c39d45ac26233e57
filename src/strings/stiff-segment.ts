/** A uniform piece of string in SI units. */
export interface StiffSegment {
  readonly lengthM: number;
  readonly densityKgPerM: number;
  readonly bendingStiffnessNm2: number;
}

/** Dynamic stiffness of a piece at one frequency; rows and columns are deflection y and slope θ at either end. */
export interface SegmentStiffness {
  /** Right end on itself; the left end is its mirror: the same but for the sign of `yTheta`. */
  readonly yy: number;
  readonly yTheta: number;
  readonly thetaTheta: number;
  /** Left end on right end: y₀ on y₁, θ₀ on y₁ (y₀ on θ₁ is minus that), θ₀ on θ₁. */
  readonly crossYy: number;
  readonly crossThetaY: number;
  readonly crossThetaTheta: number;
  /** Modes below this frequency of the piece with both ends clamped. */
  readonly clampedModes: number;
}

/** Signs of cosine and sine of half the phase by its whole half-waves: counted once, so that rounding cannot set count and sign at odds. */
const COSINE_SIGNS = [1, -1, -1, 1] as const;
const SINE_SIGNS = [1, 1, -1, -1] as const;

/**
 * Exact dynamic stiffness of one uniform piece under tension: E·I·y'''' − T·y'' − μ·ω²·y = 0.
 *
 * a² = 2·μ·ω²/(T + q), b² = (T + q)/(2·E·I), q = √(T² + 4·E·I·μ·ω²): this form of a does not cancel.
 * The piece is split into motions even and odd about its middle, so that only tan-like terms of a·l/2 and tanh(b·l/2)
 * remain and nothing overflows. With c, s, t = cos, sin(a·l/2), tanh(b·l/2), D = b·t·c + a·s and D' = b·s − a·t·c:
 * even: yy = −a·b·(a² + b²)·s·t/D, yθ = a·b·D'/D, θθ = (a² + b²)·c/D;
 * odd: yy = a·b·(a² + b²)·c/D', yθ = −a·b·D/D', θθ = (a² + b²)·s·t/D'; all times E·I.
 * Clamped modes: ⌊a·l/π⌋ less the negatives among the two θθ.
 * @source OWN from the general solution @source WITTRICK-WILLIAMS-1971 for the count
 */
export function segmentStiffnessOf(segment: StiffSegment, tensionN: number, angularHz: number): SegmentStiffness {
  const { lengthM, densityKgPerM, bendingStiffnessNm2: ei } = segment;
  const inertia = densityKgPerM * angularHz ** 2;
  const sum = tensionN + Math.sqrt(tensionN ** 2 + 4 * ei * inertia);
  const a = Math.sqrt((2 * inertia) / sum);
  const b = Math.sqrt(sum / (2 * ei));
  const phase = a * lengthM;
  const halfWaves = Math.floor(phase / Math.PI);
  const c = Math.abs(Math.cos(phase / 2)) * (COSINE_SIGNS[halfWaves % 4] ?? 1);
  const s = Math.abs(Math.sin(phase / 2)) * (SINE_SIGNS[halfWaves % 4] ?? 1);
  const t = Math.tanh((b * lengthM) / 2);
  const even = b * t * c + a * s;
  const odd = oddOf(a, b, lengthM / 2) ?? b * s - a * t * c;
  const both = a * a + b * b;
  const [evenYy, oddYy] = [(-a * b * both * s * t) / even, (a * b * both * c) / odd];
  const [evenYTheta, oddYTheta] = [(a * b * odd) / even, (-a * b * even) / odd];
  const [evenTheta, oddTheta] = [(both * c) / even, (both * s * t) / odd];
  const half = ei / 2;
  return {
    yy: half * (evenYy + oddYy),
    yTheta: half * (evenYTheta + oddYTheta),
    thetaTheta: half * (evenTheta + oddTheta),
    crossYy: half * (evenYy - oddYy),
    crossThetaY: half * (oddYTheta - evenYTheta),
    crossThetaTheta: half * (oddTheta - evenTheta),
    clampedModes: halfWaves - (evenTheta < 0 ? 1 : 0) - (oddTheta < 0 ? 1 : 0),
  };
}

/** Up to this half-phase the difference in D' is taken by its series: there each loses what the other keeps. */
const SHORT = 1;

/** D' = b·s − a·t·c of a short piece, where the difference would cancel; `undefined` for others. */
function oddOf(a: number, b: number, halfLength: number): number | undefined {
  const [x, y] = [(a * halfLength) ** 2, (b * halfLength) ** 2];
  if (Math.max(x, y) > SHORT) return undefined;
  return a * b * halfLength * (remainder(-x) + (Math.cos(a * halfLength) * -remainder(y)) / Math.cosh(b * halfLength));
}

/** sinh(z)/z − cosh(z) by its series in z², to the last place up to |z²| = 1; with z² below nought, sin and cos. */
function remainder(square: number): number {
  let term = 1;
  let sum = 0;
  for (let k = 1; k <= 9; k += 1) {
    term *= square / (2 * k * (2 * k + 1));
    sum -= 2 * k * term;
  }
  return sum;
}
