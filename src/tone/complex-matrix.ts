import { solvePositive, type ComplexList } from '#numerics';

/** A small square complex matrix, rows one after the other. */
export interface ComplexMatrix extends ComplexList {
  readonly size: number;
}

/** A matrix of noughts. */
export function zeroMatrix(size: number): ComplexMatrix {
  return { size, re: new Float64Array(size * size), im: new Float64Array(size * size) };
}

/** A·x. */
export function timesVector({ size, re, im }: ComplexMatrix, x: ComplexList): ComplexList {
  const out = { re: new Float64Array(size), im: new Float64Array(size) };
  for (let row = 0; row < size; row++) {
    for (let k = 0; k < size; k++) {
      const [a, b, c, d] = [re[row * size + k] ?? 0, im[row * size + k] ?? 0, x.re[k] ?? 0, x.im[k] ?? 0];
      out.re[row] = (out.re[row] ?? 0) + a * c - b * d;
      out.im[row] = (out.im[row] ?? 0) + a * d + b * c;
    }
  }
  return out;
}

/** Column of a matrix. */
export function columnOf({ size, re, im }: ComplexMatrix, column: number): ComplexList {
  const pick = (list: Float64Array): Float64Array => Float64Array.from({ length: size }, (_, row) => list[row * size + column] ?? 0);
  return { re: pick(re), im: pick(im) };
}

/** xᴴ·y. */
export function innerProduct(x: ComplexList, y: ComplexList): { readonly re: number; readonly im: number } {
  let [re, im] = [0, 0];
  for (let at = 0; at < x.re.length; at++) {
    const [a, b, c, d] = [x.re[at] ?? 0, x.im[at] ?? 0, y.re[at] ?? 0, y.im[at] ?? 0];
    re += a * c + b * d;
    im += a * d - b * c;
  }
  return { re, im };
}

/** Solves A·x = b for a Hermitian positive definite A = P + iQ through the real system [[P, −Q], [Q, P]] of twice the size. */
export function solveHermitian({ size, re, im }: ComplexMatrix, right: ComplexList): ComplexList | undefined {
  const real = new Float64Array(4 * size * size);
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      const [p, q] = [re[row * size + column] ?? 0, im[row * size + column] ?? 0];
      real[row * 2 * size + column] = p;
      real[(row + size) * 2 * size + column + size] = p;
      real[row * 2 * size + column + size] = -q;
      real[(row + size) * 2 * size + column] = q;
    }
  }
  const x = solvePositive(real, Float64Array.from([...right.re, ...right.im]));
  return x === undefined ? undefined : { re: x.slice(0, size), im: x.slice(size) };
}
