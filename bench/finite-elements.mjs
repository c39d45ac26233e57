/**
 * Partials of a stiff string by finite elements, written as well as that method is written: Hermite cubic beams under tension,
 * K and M kept as bands of four diagonals, one band factorisation, and Lanczos on K⁻¹·M with full reorthogonalisation in the
 * inner product of M. The work grows with the number of elements, not with its square.
 */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';

const HALF = 4;
/** Lanczos steps for each partial wanted: the highest of them has settled long before. */
const STEPS_PER_PARTIAL = 4;

/** Elements of even length within each piece of the string. */
function meshOf({ segments }, elements) {
  const whole = segments.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
  return segments.flatMap(({ lengthMm, linearDensityGPerM, bendingStiffnessNm2: ei }) => {
    const n = Math.max(1, Math.round((elements * lengthMm) / whole));
    return Array.from({ length: n }, () => ({ h: (lengthMm * 1e-3) / n, mu: linearDensityGPerM * 1e-3, ei }));
  });
}

const bendOf = (h) => [[12, 6 * h, -12, 6 * h], [6 * h, 4 * h * h, -6 * h, 2 * h * h], [-12, -6 * h, 12, -6 * h], [6 * h, 2 * h * h, -6 * h, 4 * h * h]];
const pullOf = (h) => [[36, 3 * h, -36, 3 * h], [3 * h, 4 * h * h, -3 * h, -h * h], [-36, -3 * h, 36, -3 * h], [3 * h, -h * h, -3 * h, 4 * h * h]];
const massOf = (h) => [[156, 22 * h, 54, -13 * h], [22 * h, 4 * h * h, 13 * h, -3 * h * h], [54, 13 * h, 156, -22 * h], [-13 * h, -3 * h * h, -22 * h, 4 * h * h]];

/** K and M as bands: `bands[k][i]` is the entry (i + k, i). Held ends keep their row, with nothing in it but a one in K. */
function assemble(string, elements) {
  const pieces = meshOf(string, elements);
  const size = 2 * (pieces.length + 1);
  const held = (i) => i === 0 || i === size - 2;
  const bands = () => Array.from({ length: HALF }, () => new Float64Array(size));
  const [k, m] = [bands(), bands()];
  for (const [e, { h, mu, ei }] of pieces.entries()) {
    const [bend, pull, mass] = [bendOf(h), pullOf(h), massOf(h)];
    for (let a = 0; a < 4; a += 1) for (let b = 0; b <= a; b += 1) {
      const [i, j] = [2 * e + a, 2 * e + b];
      if (held(i) || held(j)) continue;
      k[i - j][j] += (bend[a][b] * ei) / h ** 3 + (pull[a][b] * string.tensionN) / (30 * h);
      m[i - j][j] += (mass[a][b] * mu * h) / 420;
    }
  }
  for (const i of [0, size - 2]) k[0][i] = 1;
  return { k, m, size };
}

/** L·D·Lᵀ of a positive definite band, in place. */
function factorise(bands, size) {
  for (let c = 0; c < size; c += 1) {
    const from = Math.max(0, c - HALF + 1);
    for (let p = from; p < c; p += 1) bands[0][c] -= bands[c - p][p] ** 2 * bands[0][p];
    for (let r = c + 1; r < Math.min(size, c + HALF); r += 1) {
      for (let p = Math.max(0, r - HALF + 1); p < c; p += 1) bands[r - c][c] -= bands[r - p][p] * bands[c - p][p] * bands[0][p];
      bands[r - c][c] /= bands[0][c];
    }
  }
}

function solve(factors, size, x) {
  for (let i = 0; i < size; i += 1) for (let p = Math.max(0, i - HALF + 1); p < i; p += 1) x[i] -= factors[i - p][p] * x[p];
  for (let i = size - 1; i >= 0; i -= 1) {
    x[i] /= factors[0][i];
    for (let r = i + 1; r < Math.min(size, i + HALF); r += 1) x[i] -= factors[r - i][i] * x[r];
  }
  return x;
}

function times(bands, size, x) {
  const y = new Float64Array(size);
  for (let i = 0; i < size; i += 1) {
    y[i] += bands[0][i] * x[i];
    for (let k = 1; k < HALF && i + k < size; k += 1) {
      y[i + k] += bands[k][i] * x[i];
      y[i] += bands[k][i] * x[i + k];
    }
  }
  return y;
}

const dot = (a, b) => {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += a[i] * b[i];
  return sum;
};

/** The lowest partials in Hz; both ends pinned. */
export function finiteElementPartials(string, elements, partials = 20) {
  const { k, m, size } = assemble(string, elements);
  factorise(k, size);
  const steps = Math.min(size - 2, STEPS_PER_PARTIAL * partials);
  const [basis, heavy, alphas, betas] = [[], [], [], []];
  let vector = Float64Array.from({ length: size }, (_, i) => (i === 0 || i === size - 2 ? 0 : Math.sin(12.9898 * (i + 1))));
  for (let step = 0; step < steps; step += 1) {
    let weighted = times(m, size, vector);
    const norm = Math.sqrt(dot(vector, weighted));
    if (step > 0) betas.push(norm);
    vector = vector.map((value) => value / norm);
    weighted = weighted.map((value) => value / norm);
    basis.push(vector);
    heavy.push(weighted);
    const next = solve(k, size, Float64Array.from(weighted));
    alphas.push(dot(next, weighted));
    for (let pass = 0; pass < 2; pass += 1) {
      for (const [at, known] of basis.entries()) {
        const share = dot(next, heavy[at]);
        for (let i = 0; i < size; i += 1) next[i] -= share * known[i];
      }
    }
    vector = next;
  }
  const tridiagonal = Matrix.zeros(steps, steps);
  for (let i = 0; i < steps; i += 1) {
    tridiagonal.set(i, i, alphas[i]);
    if (i > 0) for (const [r, c] of [[i, i - 1], [i - 1, i]]) tridiagonal.set(r, c, betas[i - 1]);
  }
  const values = new EigenvalueDecomposition(tridiagonal, { assumeSymmetric: true }).realEigenvalues.sort((a, b) => b - a);
  return values.slice(0, partials).map((value) => 1 / Math.sqrt(value) / (2 * Math.PI));
}
