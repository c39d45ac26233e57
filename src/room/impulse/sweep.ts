import { type ComplexList, powerOfTwoFrom, signalOf, spectrumOf } from '#numerics';
import type { Hertz, Seconds } from '#units';

/** A tone that rises by equal steps of pitch in equal times. */
export interface Sweep {
  readonly fromHz: Hertz;
  readonly toHz: Hertz;
  readonly lengthS: Seconds;
}

/** The sweep as played: sin(2πf₁L·(e^(t/L) − 1)), L = T/ln(f₂/f₁). @source FARINA-2000 */
export function sweepOf({ fromHz, toHz, lengthS }: Sweep, sampleRateHz: number): Float64Array {
  const rate = lengthS / Math.log(toHz / fromHz);
  return Float64Array.from({ length: Math.round(lengthS * sampleRateHz) }, (_, at) => Math.sin(2 * Math.PI * fromHz * rate * Math.expm1(at / sampleRateHz / rate)));
}

/** How far below its strongest part the sweep’s spectrum may go before it is no longer divided by. */
const FLOOR = 1e-6;

/** What an impulse would have left in the room: the take divided by the sweep, spectrum by spectrum. Echoes of distortion come before time nought and wrap to the end. @source FARINA-2000 */
export function impulseBehind(take: Float64Array, sweep: Sweep, sampleRateHz: number): Float64Array {
  const played = sweepOf(sweep, sampleRateHz);
  const size = powerOfTwoFrom(take.length + played.length);
  const [heard, source] = [take, played].map((signal) => spectrumOf(padded(signal, size))) as [ComplexList, ComplexList];
  const strongest = source.re.reduce((most, re, at) => Math.max(most, re ** 2 + (source.im[at] ?? 0) ** 2), 0);
  const [re, im] = [new Float64Array(size), new Float64Array(size)];
  for (let at = 0; at < size; at += 1) {
    const [a, b, c, d] = [heard.re[at] ?? 0, heard.im[at] ?? 0, source.re[at] ?? 0, source.im[at] ?? 0];
    const below = c * c + d * d + FLOOR * strongest;
    re[at] = (a * c + b * d) / below;
    im[at] = (b * c - a * d) / below;
  }
  return signalOf({ re, im }).re.slice(0, take.length);
}

function padded(signal: Float64Array, size: number): ComplexList {
  const re = new Float64Array(size);
  re.set(signal);
  return { re, im: new Float64Array(size) };
}
