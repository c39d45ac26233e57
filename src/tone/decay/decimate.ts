import type { Samples } from '#numerics';

/** Filter length over the factor: a Hann-windowed sinc so long passes half the new band and stops what would fold onto it. */
const LENGTH = 8;

/**
 * The sound at a lower rate that still holds everything below `highestHz`: each D samples one, D = ⌊fs/(4·highest)⌋, after a low-pass
 * (Hann-windowed sinc of 8·D taps, cut-off at the new Nyquist frequency) that is flat to a thousandth up to half of it.
 */
export function decimated({ sampleRateHz, channels }: Samples, highestHz: number): Samples {
  const factor = Math.floor(sampleRateHz / (4 * highestHz));
  if (factor < 2) return { sampleRateHz, channels };
  const half = (LENGTH * factor) / 2;
  const taps = Float64Array.from({ length: 2 * half + 1 }, (_, at) => tap((at - half) / factor));
  const sum = taps.reduce((all, value) => all + value, 0);
  const filter = taps.map((value) => value / sum);
  return { sampleRateHz: sampleRateHz / factor, channels: channels.map((channel) => thinned(channel, filter, factor)) };
}

function tap(x: number): number {
  const sinc = x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
  return sinc * Math.cos((Math.PI * x) / LENGTH) ** 2;
}

function thinned(channel: Float64Array, filter: Float64Array, factor: number): Float64Array {
  const half = (filter.length - 1) / 2;
  const out = new Float64Array(Math.floor(channel.length / factor));
  for (let at = 0; at < out.length; at++) {
    const first = at * factor - half;
    const [from, to] = [Math.max(0, -first), Math.min(filter.length, channel.length - first)];
    let sum = 0;
    for (let index = from; index < to; index++) sum += (filter[index] ?? 0) * (channel[first + index] ?? 0);
    out[at] = sum;
  }
  return out;
}
