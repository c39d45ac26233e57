import { type Samples, powerOfTwoFrom, realSpectrumOf } from '#numerics';

/**
 * Frequency of a partial by another way than the program's: the highest bin of a long Hann-windowed transform, zero-padded eightfold, near a
 * place, and a parabola through the decibels of three bins; the channels' powers added. No model of decay, no fit.
 */
export function longTransformHz({ sampleRateHz, channels }: Samples, { fromS, toS }: { readonly fromS: number; readonly toS: number }): (placeHz: number, withinHz: number) => number {
  const [from, to] = [Math.round(fromS * sampleRateHz), Math.round(toS * sampleRateHz)];
  const size = 8 * powerOfTwoFrom(to - from);
  const power = new Float64Array(size / 2);
  for (const channel of channels) {
    const windowed = channel.subarray(from, to).map((x, at) => x * Math.sin((Math.PI * (at + 0.5)) / (to - from)) ** 2);
    const { re, im } = realSpectrumOf(windowed, size);
    for (let k = 0; k < power.length; k++) power[k] = (power[k] ?? 0) + (re[k] ?? 0) ** 2 + (im[k] ?? 0) ** 2;
  }
  const binHz = sampleRateHz / size;
  return (placeHz, withinHz) => {
    let best = Math.round(placeHz / binHz);
    for (let k = Math.ceil((placeHz - withinHz) / binHz); k <= (placeHz + withinHz) / binHz; k++) if ((power[k] ?? 0) > (power[best] ?? 0)) best = k;
    const [a, b, c] = [-1, 0, 1].map((step) => Math.log(power[best + step] ?? 1e-300));
    return (best + ((a ?? 0) - (c ?? 0)) / (2 * ((a ?? 0) - 2 * (b ?? 0) + (c ?? 0)))) * binHz;
  };
}
