import { inverseOfPositive } from '#numerics';
import type { SyntheticLine } from './synthetic.ts';

/** Least standard deviations any unbiased estimate can have. */
export interface CramerRao {
  readonly f0Cents: number;
  readonly relativeB: number;
}

interface Case {
  readonly lines: readonly SyntheticLine[];
  readonly f0Hz: number;
  readonly inharmonicityB: number;
  /** Standard deviation of the white noise a sample. */
  readonly noise: number;
  readonly onsetS: number;
  readonly fromS: number;
  readonly toS: number;
  readonly sampleRateHz: number;
}

/** Re(c·m^p·e^(s·m)), the form every derivative of a damped cosine has: by frequency and damping with p = 1, by amplitude and phase with p = 0. */
interface Derivative {
  readonly c: readonly [number, number];
  readonly p: 0 | 1;
  readonly s: readonly [number, number];
}

/**
 * Cramér–Rao bound of f0 and B, from the Fisher information of Σ a_n·e^(−α_n t)·cos(ω_n t + φ_n) in white noise, ω_n = 2πn·f0·√(1 + B·n²), with every
 * a, φ and α unknown as well: F = (1/σ²)·Σ_t ∂x/∂θ·(∂x/∂θ)ᵀ over the samples of the window. @source KAY-1993
 */
export function cramerRaoOf({ lines, f0Hz, inharmonicityB, noise, onsetS, fromS, toS, sampleRateHz }: Case): CramerRao {
  const count = Math.round((toS - fromS) * sampleRateHz);
  const unknowns = 2 + 3 * lines.length;
  const fisher = new Float64Array(unknowns * unknowns);
  const add = (row: number, column: number, value: number): void => { fisher[row * unknowns + column] = (fisher[row * unknowns + column] ?? 0) + value / noise ** 2; };
  const all = lines.flatMap((line, index) => derivativesOf(line, fromS - onsetS, sampleRateHz).map((derivative, which) => ({ derivative, index, unknowns: chain(line, index, which, f0Hz, inharmonicityB, sampleRateHz) })));
  for (const one of all) {
    for (const other of all) {
      const value = productOf(one.derivative, other.derivative, count, one.index === other.index);
      for (const [row, x] of one.unknowns) for (const [column, y] of other.unknowns) add(row, column, x * y * value);
    }
  }
  const scales = Array.from({ length: unknowns }, (_, k) => Math.sqrt(fisher[k * unknowns + k] ?? 1));
  const inverse = inverseOfPositive(fisher.map((value, at) => value / ((scales[Math.floor(at / unknowns)] ?? 1) * (scales[at % unknowns] ?? 1))));
  const deviation = (k: number): number => Math.sqrt(inverse?.[k * unknowns + k] ?? Number.NaN) / (scales[k] ?? 1);
  return { f0Cents: (1200 / Math.LN2) * deviation(0), relativeB: deviation(1) / inharmonicityB };
}

/** By ω (a sample), by a, by φ, by α (a sample): derivatives of Re(a·e^(iφ)·e^(sm)) from the begin of the window on. */
function derivativesOf({ frequencyHz, amplitude, phase, dampingPerS }: SyntheticLine, sinceOnsetS: number, sampleRateHz: number): readonly Derivative[] {
  const s = [-dampingPerS / sampleRateHz, (2 * Math.PI * frequencyHz) / sampleRateHz] as const;
  const size = amplitude * Math.exp(-dampingPerS * sinceOnsetS);
  const angle = phase + 2 * Math.PI * frequencyHz * sinceOnsetS;
  const [x, y] = [size * Math.cos(angle), size * Math.sin(angle)];
  return [{ c: [-y, x], p: 1, s }, { c: [x / size, y / size], p: 0, s }, { c: [-y, x], p: 0, s }, { c: [-x, -y], p: 1, s }];
}

/** Which unknowns a derivative of line `index` belongs to, and with what factor: u = ln f0 and B share the frequencies. */
function chain({ n }: SyntheticLine, index: number, which: number, f0Hz: number, inharmonicityB: number, sampleRateHz: number): readonly (readonly [number, number])[] {
  if (which !== 0) return [[2 + 3 * index + which - 1, 1]];
  const omega = (2 * Math.PI * n * f0Hz * Math.sqrt(1 + inharmonicityB * n * n)) / sampleRateHz;
  return [[0, omega], [1, (omega * n * n) / (2 * (1 + inharmonicityB * n * n))]];
}

/** Σ_m Re(x)·Re(y) = ½·Re Σ (x·y + x·ȳ). */
function productOf(x: Derivative, y: Derivative, count: number, isSame: boolean): number {
  const half = (conjugate: 1 | -1): number => {
    const c = [x.c[0] * y.c[0] - conjugate * x.c[1] * y.c[1], conjugate * x.c[0] * y.c[1] + x.c[1] * y.c[0]] as const;
    const sum = powerSum(x.s[0] + y.s[0], x.s[1] + conjugate * y.s[1], x.p + y.p, count, isSame && conjugate === -1);
    return c[0] * sum[0] - c[1] * sum[1];
  };
  return (half(1) + half(-1)) / 2;
}

type Complex = readonly [number, number];
const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c];
const over = ([a, b]: Complex, [c, d]: Complex): Complex => [(a * c + b * d) / (c * c + d * d), (b * c - a * d) / (c * c + d * d)];

/** Σ_{m<M} m^p·e^(sm), term by term where s is near nought, by summation by parts otherwise: (1 − g)·S_p = Σ_{j<p} (p choose j)·g·S_j − M^p·g^M + [p = 0] − (the last step). */
function powerSum(re: number, im: number, p: number, count: number, slow: boolean): Complex {
  if (slow) {
    let sum = 0;
    for (let m = 0; m < count; m++) sum += m ** p * Math.exp(re * m);
    return [sum, 0];
  }
  const g: Complex = [Math.exp(re) * Math.cos(im), Math.exp(re) * Math.sin(im)];
  const last: Complex = [Math.exp(re * count) * Math.cos(im * count), Math.exp(re * count) * Math.sin(im * count)];
  const one: Complex = [1 - g[0], -g[1]];
  const s0 = over([1 - last[0], -last[1]], one);
  if (p === 0) return s0;
  const s1 = over(minus(times(g, s0), times(last, [count, 0])), one);
  if (p === 1) return s1;
  return over(minus(plus(times(g, times([2, 0], s1)), times(g, s0)), times(last, [count * count, 0])), one);
}

const plus = ([a, b]: Complex, [c, d]: Complex): Complex => [a + c, b + d];
const minus = ([a, b]: Complex, [c, d]: Complex): Complex => [a - c, b - d];
