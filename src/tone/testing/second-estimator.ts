import type { Samples } from '#numerics';

interface Around {
  readonly placeHz: number;
  /** Distance of the partials. */
  readonly spacingHz: number;
  readonly fromS: number;
  readonly toS: number;
}

/** How often the running mean is taken: each puts a nought on the neighbours. */
const PASSES = 3;

/**
 * Frequency of a partial by another way than the program's, in time and without a model: the sound is turned down by the place, smoothed by three running
 * means one spacing of partials long, and f = place + arg Σ ȳ(t)·y(t + Δ)/(2πΔ), which is the mean of the lines by energy. @source KAY-1989
 */
export function pulsePairHz({ sampleRateHz, channels }: Samples, { placeHz, spacingHz, fromS, toS }: Around): number {
  const length = Math.round(sampleRateHz / spacingHz);
  const [from, to] = [Math.round(fromS * sampleRateHz) - Math.floor((PASSES * length) / 2), Math.round(toS * sampleRateHz)];
  let [x, y] = [0, 0];
  for (const channel of channels) {
    let [re, im] = turnedDown(channel.subarray(from, to), (2 * Math.PI * placeHz) / sampleRateHz);
    for (let pass = 0; pass < PASSES; pass++) [re, im] = [runningMean(re, length), runningMean(im, length)];
    for (let at = 0; at + length < re.length; at++) {
      const [a, b, c, d] = [re[at] ?? 0, im[at] ?? 0, re[at + length] ?? 0, im[at + length] ?? 0];
      x += a * c + b * d;
      y += a * d - b * c;
    }
  }
  return placeHz + (Math.atan2(y, x) * sampleRateHz) / (2 * Math.PI * length);
}

function turnedDown(channel: Float64Array, step: number): [Float64Array, Float64Array] {
  return [channel.map((value, at) => value * Math.cos(step * at)), channel.map((value, at) => -value * Math.sin(step * at))];
}

/** Mean of each `length` values in a row; as many fewer come out. */
function runningMean(list: Float64Array, length: number): Float64Array {
  const out = new Float64Array(Math.max(0, list.length - length));
  let sum = 0;
  for (let at = 0; at < length; at++) sum += list[at] ?? 0;
  for (let at = 0; at < out.length; at++) {
    out[at] = sum / length;
    sum += (list[at + length] ?? 0) - (list[at] ?? 0);
  }
  return out;
}
