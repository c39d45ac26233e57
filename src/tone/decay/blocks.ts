import { type Bottom, type PowerCurve, meanPower } from './energy-decay.ts';

/** Level of the note over time, the noise taken off, in even blocks from the beginning to where twice the noise is left. */
export interface LevelBlocks {
  readonly levelDb: readonly number[];
  readonly stepS: number;
}

/** Most blocks of a curve: enough for beats of eight cycles a second over sixteen seconds. */
const MOST_BLOCKS = 256;

/** The row ends where the note last stands so far over the noise: below, what the noise is not known to bends it. */
const ABOVE_NOISE_DB = 5;

/** Mean power in even blocks as levels over 1; a block that falls below the noise is set down at the noise, since it tells no more. */
export function blocksOf({ power, stepS, noise }: PowerCurve, { end }: Bottom): LevelBlocks {
  const span = Math.max(1, Math.ceil(end / MOST_BLOCKS));
  const levelDb: number[] = [];
  for (let at = 0; at + span <= end; at += span) {
    levelDb.push(10 * Math.log10(Math.max(meanPower(power, at, span) - noise, noise, Number.MIN_VALUE)));
  }
  const leastDb = noise > 0 ? 10 * Math.log10(noise) + ABOVE_NOISE_DB : -Infinity;
  return { levelDb: levelDb.slice(0, levelDb.findLastIndex((level) => level >= leastDb) + 1), stepS: span * stepS };
}
