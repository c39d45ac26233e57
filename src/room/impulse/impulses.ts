import { medianOf } from '#numerics';
import { blockLevelsOf } from './block-levels.ts';

/** Between impulses, at least: nearer ones are echoes of one. */
const APART_S = 0.4;
/** An impulse rises so far over what is usual in the take. */
const OVER_DB = 20;
/** An impulse begins where it is so far below its own peak. @source ISO-3382-1 */
const UNDER_PEAK_DB = 20;
const FRAME_S = 0.005;

/** A stretch of the take that begins with an impulse and ends before the next. */
export interface ImpulsePlace {
  readonly from: number;
  readonly to: number;
}

/** Where claps or bursts begin in a take, as sample numbers; every one loud enough to stand out, the strongest giving the measure. */
export function impulsesOf(signal: Float64Array, sampleRateHz: number): readonly ImpulsePlace[] {
  const frame = Math.max(1, Math.round(FRAME_S * sampleRateHz));
  const levels = blockLevelsOf(signal.length, frame, (at) => (signal[at] ?? 0) ** 2);
  if (levels.length < 4) return [];
  const floor = medianOf(levels);
  const loudest = levels.reduce((most, level) => Math.max(most, level), -Infinity);
  const threshold = Math.max(floor + OVER_DB, loudest - OVER_DB);
  const starts: number[] = [];
  let last = -Infinity;
  levels.forEach((level, index) => {
    const rises = level >= threshold && (levels[index - 1] ?? -Infinity) < level - 6;
    if (!rises || (index - last) * FRAME_S < APART_S) return;
    last = index;
    starts.push(onsetNear(signal, index * frame, frame));
  });
  return starts.map((from, index) => ({ from, to: starts[index + 1] === undefined ? signal.length : (starts[index + 1] ?? 0) - frame }));
}

/** First sample of an impulse: within its first frames, where it comes within 20 dB of its peak. */
function onsetNear(signal: Float64Array, start: number, frame: number): number {
  const [from, to] = [Math.max(0, start - frame), Math.min(signal.length, start + 4 * frame)];
  let peak = 0;
  for (let at = from; at < to; at += 1) peak = Math.max(peak, Math.abs(signal[at] ?? 0));
  const least = peak * 10 ** (-UNDER_PEAK_DB / 20);
  for (let at = from; at < to; at += 1) if (Math.abs(signal[at] ?? 0) >= least) return at;
  return start;
}
