import { type Samples, powerOfTwoFrom, realSpectrumOf } from '#numerics';

/** Power spectrum of a stretch under a Hann window: summed over bins, the mean power of the windowed stretch, as if it were steady. */
export interface ToneWindow {
  readonly fromS: number;
  readonly seconds: number;
  readonly binHz: number;
  /** Power a bin, channels summed. */
  readonly power: Float64Array;
  readonly channelPowers: readonly Float64Array[];
}

/** Padding of the transform: bins four times finer than the window resolves at least leave no dip between them. */
const PADDING = 2;

/** Spectrum of a stretch; undefined where the sound ends before. Σ power = Σ(w·x)²/Σw². */
export function toneWindowOf({ sampleRateHz, channels }: Samples, fromS: number, seconds: number): ToneWindow | undefined {
  const [from, count] = [Math.round(fromS * sampleRateHz), Math.round(seconds * sampleRateHz)];
  if (from < 0 || count < 8 || from + count > (channels[0]?.length ?? 0)) return undefined;
  const size = PADDING * powerOfTwoFrom(count);
  const weights = Float64Array.from({ length: count }, (_, at) => Math.sin((Math.PI * (at + 0.5)) / count) ** 2);
  const scale = 2 / (size * 0.375 * count);
  const channelPowers = channels.map((channel) => {
    const { re, im } = realSpectrumOf(weights.map((weight, at) => weight * (channel[from + at] ?? 0)), size);
    return re.map((x, bin) => scale * (x * x + (im[bin] ?? 0) ** 2));
  });
  const power = (channelPowers[0] ?? new Float64Array()).map((_, bin) => channelPowers.reduce((sum, list) => sum + (list[bin] ?? 0), 0));
  return { fromS, seconds, binHz: sampleRateHz / size, power, channelPowers };
}

/** Power between two frequencies. */
export function bandPowerOf({ power, binHz }: Pick<ToneWindow, 'power' | 'binHz'>, fromHz: number, toHz: number): number {
  const [from, to] = [Math.max(1, Math.ceil(fromHz / binHz)), Math.min(power.length - 1, Math.floor(toHz / binHz))];
  let sum = 0;
  for (let bin = from; bin <= to; bin++) sum += power[bin] ?? 0;
  return sum;
}
