import { type PowerCurve, bottomOf, lineThrough, meanPower } from './energy-decay.ts';

/** What ends the decay that can be read: the noise or the end of the recording, a damper, or somebody’s fade. */
export const endings = ['open', 'damper', 'fade'] as const;

/** When a decay is cut off, and by what. */
export interface Cut {
  readonly atS: number;
  readonly by: 'damper' | 'fade';
}

const BLOCK_S = 0.02;
/** Beats shorter than this are filled up from the crest that follows. */
const BEAT_S = 0.5;
/** A corner stands so far over the chord that cuts it off. */
const LEAST_CORNER_DB = 8;
/** A damper takes the level down as fast as this, and more. */
const DAMPER_DB_PER_S = 48;
/** 80 dB below its beginning a note counts as silent, so that silence put in by an editor is the bottom too. */
const LOWEST_SHARE = 1e-8;

/**
 * When a damper or a fade cuts the decay off, or undefined. A string left alone decays slower and slower: its level lies on its own lower
 * convex hull. Where the last chord of the hull runs 8 dB below the level, the corner that stands highest over it is the cut.
 * @source OWN
 */
export function cutOf(curve: PowerCurve): Cut | undefined {
  const { power, stepS } = curve;
  const noise = Math.max(curve.noise, LOWEST_SHARE * (power[0] ?? 0));
  const span = Math.max(1, Math.round(BLOCK_S / stepS));
  const blockS = span * stepS;
  const count = Math.floor(bottomOf({ ...curve, noise }).end / span);
  const levels = Float64Array.from({ length: count }, (_, at) => 10 * Math.log10(Math.max(meanPower(power, at * span, span) - noise, noise, Number.MIN_VALUE)));
  if (count < 4) return undefined;
  const filled = crestsOf(levels, Math.round(BEAT_S / blockS));
  const corner = cornerOf(filled);
  if (corner === undefined) return undefined;
  const { slope } = lineThrough(filled, corner, Math.min(count, corner + Math.max(3, Math.round(0.5 / blockS))));
  return { atS: corner * blockS, by: -slope / blockS >= DAMPER_DB_PER_S ? 'damper' : 'fade' };
}

/** The highest level from each place to so many blocks on, the end left as it is. */
function crestsOf(levels: Float64Array, reach: number): Float64Array {
  return levels.map((level, at) => levels.subarray(at, at + reach + 1).reduce((most, value) => Math.max(most, value), level));
}

/** The place that stands highest over the last chord of the lower convex hull, if it stands high enough. */
function cornerOf(levels: Float64Array): number | undefined {
  const last = levels.length - 1;
  const end = levels[last] ?? 0;
  let [from, steepest] = [0, -Infinity];
  for (let at = 0; at < last; at++) {
    const rise = ((levels[at] ?? 0) - end) / (last - at);
    if (at === 0 || rise < steepest) [from, steepest] = [at, rise];
  }
  let [corner, height] = [from, 0];
  for (let at = from; at < last; at++) {
    const over = (levels[at] ?? 0) - (end + steepest * (last - at));
    if (over > height) [corner, height] = [at, over];
  }
  return height >= LEAST_CORNER_DB ? corner : undefined;
}
