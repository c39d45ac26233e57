import { type Bottom, type PowerCurve, meanPower } from './energy-decay.ts';

/** Level of the note over time, the noise taken off, in even blocks from the beginning to where twice the noise is left. */
export interface LevelBlocks {
  readonly levelDb: readonly number[];
  readonly stepS: number;
}

/** Most blocks of a curve: enough for beats of eight cycles a second over sixteen seconds. */
const MOST_BLOCKS = 256;

/** The row ends where the note last stands so far over the noise, or so far that the doubt of the noise bends the level by no more than this. */
const ABOVE_NOISE_DB = 5;
const MOST_BEND_DB = 0.1;

/** Mean power in even blocks as levels over 1; a block that falls below the noise is set down at the noise, since it tells no more. */
export function blocksOf({ power, stepS, noise, noiseDoubt }: PowerCurve, { end }: Bottom): LevelBlocks {
  const span = Math.max(1, Math.ceil(end / MOST_BLOCKS));
  const levelDb: number[] = [];
  for (let at = 0; at + span <= end; at += span) {
    levelDb.push(10 * Math.log10(Math.max(meanPower(power, at, span) - noise, noise, Number.MIN_VALUE)));
  }
  const leastDb = noise > 0 ? 10 * Math.log10(noise) + Math.max(ABOVE_NOISE_DB, 10 * Math.log10(noiseDoubt / (10 ** (MOST_BEND_DB / 10) - 1))) : -Infinity;
  return { levelDb: levelDb.slice(0, levelDb.findLastIndex((level) => level >= leastDb) + 1), stepS: span * stepS };
}
