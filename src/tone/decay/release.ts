import { type PowerCurve, bottomOf, lineThrough, meanPower } from './energy-decay.ts';

/** A damper takes the level down so fast on the whole, from where it comes down to the noise or the end, and so many times faster than before. */
const LEAST_DB_PER_S = 48;
const STEEPER = 3;
/** And so far within a quarter of a second. */
const WITHIN_S = 0.25;
const LEAST_FALL_DB = 12;
/** A note must have rung so long for its own slope to be known. */
const RUNG_S = 0.2;
const BLOCK_S = 0.02;
/** 80 dB below its beginning a note counts as silent, so that silence put in by an editor is the bottom too. */
const LOWEST_SHARE = 1e-8;

/**
 * When a damper came down, or undefined: from there to the noise or the end the level falls three times faster than before, by 48 dB a
 * second and more, and 12 dB at once. A string left alone decays slower and slower, and beats give back what they take.
 * @source OWN
 */
export function releaseOf(curve: PowerCurve): number | undefined {
  const { power, stepS } = curve;
  const noise = Math.max(curve.noise, LOWEST_SHARE * (power[0] ?? 0));
  const span = Math.max(1, Math.round(BLOCK_S / stepS));
  const blockS = span * stepS;
  const count = Math.floor(bottomOf({ ...curve, noise }).end / span);
  const levels = Array.from({ length: count }, (_, at) => 10 * Math.log10(Math.max(meanPower(power, at * span, span) - noise, noise, Number.MIN_VALUE)));
  const last = levels.at(-1) ?? 0;
  for (let at = Math.ceil(RUNG_S / blockS); at < count - 1; at++) {
    const here = levels[at] ?? 0;
    const perS = (here - last) / ((count - 1 - at) * blockS);
    const soon = levels[Math.min(count - 1, at + Math.round(WITHIN_S / blockS))] ?? 0;
    if (perS < LEAST_DB_PER_S || here - soon < LEAST_FALL_DB) continue;
    const before = -lineThrough(levels, 0, at).slope / blockS;
    if (perS >= STEEPER * before) return at * blockS;
  }
  return undefined;
}
