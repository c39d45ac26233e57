import type { ComplexList } from '#numerics';
import { type ComplexMatrix, columnOf, factorOf, innerProduct, solveWith, timesVector, zeroMatrix } from './complex-matrix.ts';

/** Exponents of damped lines, per sample: z_j^m = e^((re + i·im)·m); re below nought is damping. */
export type Exponents = ComplexList;

/** The best damped lines of a number, by least squares. */
export interface LinesFit {
  readonly exponents: Exponents;
  /** By channel: one complex amplitude a line, at the first sample. */
  readonly amplitudes: readonly ComplexList[];
  /** What is left over: Σ|y − Σ a·z^m|². */
  readonly residual: number;
  /** Diagonal of the inverse of the normal matrix: times half the variance of a complex sample it is the variance of re and of im. */
  readonly spread: Float64Array;
}

const MOST_STEPS = 40;
/** Turn of the phase over the whole stretch, in radians, below which a step changes nothing. */
const SETTLED = 1e-6;
/** Share of what is left over that a step must take off to be followed by another: less moves no figure by a noticeable part of its uncertainty. */
const LEAST_GAIN = 1e-6;

/** Everything the fit needs of its data at given exponents: products of the lines z^m, of m·z^m, and of the data with both. */
interface Products {
  readonly gram: ComplexMatrix;
  readonly first: ComplexMatrix;
  readonly second: ComplexMatrix;
  readonly withData: readonly ComplexList[];
  readonly firstWithData: readonly ComplexList[];
}

/** Σ_m m^p·g^m for p = 0, 1, 2, g = e^(re + i·im), m below `count`. */
function momentsOf(re: number, im: number, count: number): readonly [number, number, number, number, number, number] {
  const shrink = Math.exp(re);
  const [turnRe, turnIm] = [shrink * Math.cos(im), shrink * Math.sin(im)];
  let [x, y] = [1, 0];
  let [a, b, c, d, e, f] = [0, 0, 0, 0, 0, 0];
  for (let m = 0; m < count; m++) {
    a += x;
    b += y;
    c += m * x;
    d += m * y;
    e += m * m * x;
    f += m * m * y;
    const next = x * turnRe - y * turnIm;
    y = x * turnIm + y * turnRe;
    x = next;
  }
  return [a, b, c, d, e, f];
}

/** Σ_m m^p·conj(z^m)·y_m for p = 0, 1. */
function dataMomentsOf(re: number, im: number, data: ComplexList): readonly [number, number, number, number] {
  const shrink = Math.exp(re);
  const [turnRe, turnIm] = [shrink * Math.cos(im), -shrink * Math.sin(im)];
  let [x, y] = [1, 0];
  let [a, b, c, d] = [0, 0, 0, 0];
  for (let m = 0; m < data.re.length; m++) {
    const [u, v] = [data.re[m] ?? 0, data.im[m] ?? 0];
    const [p, q] = [x * u - y * v, x * v + y * u];
    a += p;
    b += q;
    c += m * p;
    d += m * q;
    const next = x * turnRe - y * turnIm;
    y = x * turnIm + y * turnRe;
    x = next;
  }
  return [a, b, c, d];
}

function productsOf({ re, im }: Exponents, channels: readonly ComplexList[]): Products {
  const size = re.length;
  const count = channels[0]?.re.length ?? 0;
  const [gram, first, second] = [zeroMatrix(size), zeroMatrix(size), zeroMatrix(size)];
  for (let j = 0; j < size; j++) {
    for (let k = j; k < size; k++) {
      const moments = momentsOf((re[j] ?? 0) + (re[k] ?? 0), (im[k] ?? 0) - (im[j] ?? 0), count);
      for (const [at, matrix] of [gram, first, second].entries()) setHermitian(matrix, j, k, moments[2 * at] ?? 0, moments[2 * at + 1] ?? 0);
    }
  }
  const empty = (): ComplexList[] => channels.map(() => ({ re: new Float64Array(size), im: new Float64Array(size) }));
  const [withData, firstWithData] = [empty(), empty()];
  for (const [at, channel] of channels.entries()) {
    for (let j = 0; j < size; j++) {
      const [a, b, c, d] = dataMomentsOf(re[j] ?? 0, im[j] ?? 0, channel);
      setAt(withData[at], j, a, b);
      setAt(firstWithData[at], j, c, d);
    }
  }
  return { gram, first, second, withData, firstWithData };
}

function setHermitian({ size, re, im }: ComplexMatrix, row: number, column: number, x: number, y: number): void {
  re[row * size + column] = x;
  re[column * size + row] = x;
  im[column * size + row] = -y;
  im[row * size + column] = y;
}

function setAt(list: ComplexList | undefined, at: number, re: number, im: number): void {
  if (list === undefined) return;
  list.re[at] = re;
  list.im[at] = im;
}

interface State {
  readonly exponents: Exponents;
  readonly products: Products;
  readonly factor: ComplexMatrix;
  readonly amplitudes: readonly ComplexList[];
  readonly residual: number;
}

/** Amplitudes follow from the exponents: G·a = Φᴴy; what is left over is ‖y‖² − Σ (Φᴴy)ᴴa. */
function stateAt(exponents: Exponents, channels: readonly ComplexList[], energy: number): State | undefined {
  const products = productsOf(exponents, channels);
  const factor = factorOf(products.gram);
  if (factor === undefined) return undefined;
  const amplitudes = products.withData.map((right) => solveWith(factor, right));
  const residual = amplitudes.reduce((left, amplitude, at) => left - innerProduct(products.withData[at] ?? amplitude, amplitude).re, energy);
  return Number.isFinite(residual) ? { exponents, products, factor, amplitudes, residual: Math.max(residual, energy * 1e-15) } : undefined;
}

interface Normal {
  readonly matrix: ComplexMatrix;
  readonly gradient: ComplexList;
}

/**
 * Normal equations of the exponents with the amplitudes projected out, U = (I − ΦG⁻¹Φᴴ)·mΦ:
 * H_jk = (UᴴU)_jk·Σ_c ā_cj·a_ck and g_j = Σ_c ā_cj·(Uᴴy_c)_j, where UᴴU = R − Q·G⁻¹·Q and Uᴴy = E − Q·a.
 */
function normalOf({ products: { first, second, firstWithData }, factor, amplitudes }: State): Normal {
  const { size } = first;
  const matrix = zeroMatrix(size);
  const gradient = { re: new Float64Array(size), im: new Float64Array(size) };
  for (let k = 0; k < size; k++) {
    const drop = timesVector(first, solveWith(factor, columnOf(first, k)));
    for (let j = 0; j < size; j++) {
      const [p, q] = [(second.re[j * size + k] ?? 0) - (drop.re[j] ?? 0), (second.im[j * size + k] ?? 0) - (drop.im[j] ?? 0)];
      for (const { re, im } of amplitudes) {
        const [a, b, c, d] = [re[j] ?? 0, -(im[j] ?? 0), re[k] ?? 0, im[k] ?? 0];
        const [x, y] = [a * c - b * d, a * d + b * c];
        matrix.re[j * size + k] = (matrix.re[j * size + k] ?? 0) + p * x - q * y;
        matrix.im[j * size + k] = (matrix.im[j * size + k] ?? 0) + p * y + q * x;
      }
    }
  }
  for (const [at, amplitude] of amplitudes.entries()) {
    const drop = timesVector(first, amplitude);
    const given = firstWithData[at] ?? drop;
    for (let j = 0; j < size; j++) {
      const [p, q] = [(given.re[j] ?? 0) - (drop.re[j] ?? 0), (given.im[j] ?? 0) - (drop.im[j] ?? 0)];
      const [a, b] = [amplitude.re[j] ?? 0, -(amplitude.im[j] ?? 0)];
      gradient.re[j] = (gradient.re[j] ?? 0) + a * p - b * q;
      gradient.im[j] = (gradient.im[j] ?? 0) + a * q + b * p;
    }
  }
  return { matrix, gradient };
}

function loaded({ size, re, im }: ComplexMatrix, load: number): ComplexMatrix {
  const heavier = re.slice();
  for (let j = 0; j < size; j++) heavier[j * size + j] = (re[j * size + j] ?? 0) * (1 + load);
  return { size, re: heavier, im };
}

const moved = ({ re, im }: Exponents, step: ComplexList): Exponents => ({ re: re.map((x, j) => x + (step.re[j] ?? 0)), im: im.map((y, j) => y + (step.im[j] ?? 0)) });

function largestOf({ re, im }: ComplexList): number {
  let largest = 0;
  for (let j = 0; j < re.length; j++) largest = Math.max(largest, Math.abs(re[j] ?? 0), Math.abs(im[j] ?? 0));
  return largest;
}

/**
 * Fits y_c(m) = Σ_j a_cj·z_j^m to complex signals of one length that share the lines, from a start: variable projection (the amplitudes
 * are solved for at each step) with Levenberg and Marquardt's steps. `undefined` where the lines cannot be told apart.
 * @source GOLUB-PEREYRA-1973, in the simplified form of KAUFMAN-1975
 */
export function fitLines(channels: readonly ComplexList[], start: Exponents): LinesFit | undefined {
  const energy = channels.reduce((sum, channel) => sum + innerProduct(channel, channel).re, 0);
  const count = channels[0]?.re.length ?? 0;
  let state = stateAt(start, channels, energy);
  if (state === undefined) return undefined;
  let normal = normalOf(state);
  for (let load = 1e-3, steps = 0; steps < MOST_STEPS && load < 1e8; steps++) {
    const factor = factorOf(loaded(normal.matrix, load));
    if (factor === undefined) return undefined;
    const step = solveWith(factor, normal.gradient);
    const next = stateAt(moved(state.exponents, step), channels, energy);
    let settled = largestOf(step) * count < SETTLED;
    if (next !== undefined && next.residual < state.residual) {
      settled ||= state.residual - next.residual < LEAST_GAIN * next.residual;
      load = Math.max(load / 10, 1e-12);
      state = next;
      normal = normalOf(state);
    } else load *= 10;
    if (settled) break;
  }
  return fitOf(state, normal.matrix);
}

function fitOf({ exponents, amplitudes, residual }: State, matrix: ComplexMatrix): LinesFit | undefined {
  const factor = factorOf(matrix);
  if (factor === undefined) return undefined;
  const unit = (j: number): ComplexList => ({ re: Float64Array.from({ length: matrix.size }, (_, row) => Number(row === j)), im: new Float64Array(matrix.size) });
  const spread = Float64Array.from({ length: matrix.size }, (_, j) => solveWith(factor, unit(j)).re[j] ?? 0);
  return { exponents, amplitudes, residual, spread };
}
