import FFT from 'fft.js';

/** Complex numbers as two lists of one length. */
export interface ComplexList {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

const plans = new Map<number, FFT>();

function planOf(size: number): FFT {
  const plan = plans.get(size) ?? new FFT(size);
  plans.set(size, plan);
  return plan;
}

/** The least power of two that is not below `count`; at least 2. */
export function powerOfTwoFrom(count: number): number {
  return 2 ** Math.max(1, Math.ceil(Math.log2(count)));
}

/**
 * Discrete Fourier transform of a real signal, padded with zeros to `size` (a power of two, not below the signal's length):
 * X_k = Σ x_t·exp(−2πi·k·t/size) for k = 0 … size/2, not scaled.
 */
export function realSpectrumOf(signal: ArrayLike<number>, size: number = powerOfTwoFrom(signal.length)): ComplexList {
  const padded = new Float64Array(size);
  padded.set(signal);
  const transformed = new Float64Array(2 * size);
  planOf(size).realTransform(transformed, padded);
  return apart(transformed, size / 2 + 1);
}

/** Discrete Fourier transform of a complex list whose length is a power of two, not scaled. */
export function spectrumOf(list: ComplexList): ComplexList {
  const { length } = list.re;
  const transformed = new Float64Array(2 * length);
  planOf(length).transform(transformed, woven(list));
  return apart(transformed, length);
}

/** Inverse of `spectrumOf`: x_t = (1/N)·Σ X_k·exp(2πi·k·t/N). */
export function signalOf(spectrum: ComplexList): ComplexList {
  const { length } = spectrum.re;
  const signal = new Float64Array(2 * length);
  planOf(length).inverseTransform(signal, woven(spectrum));
  return apart(signal, length);
}

function woven({ re, im }: ComplexList): Float64Array {
  const pairs = new Float64Array(2 * re.length);
  for (let at = 0; at < re.length; at++) {
    pairs[2 * at] = re[at] ?? 0;
    pairs[2 * at + 1] = im[at] ?? 0;
  }
  return pairs;
}

function apart(pairs: Float64Array, count: number): ComplexList {
  const re = new Float64Array(count);
  const im = new Float64Array(count);
  for (let at = 0; at < count; at++) {
    re[at] = pairs[2 * at] ?? 0;
    im[at] = pairs[2 * at + 1] ?? 0;
  }
  return { re, im };
}
