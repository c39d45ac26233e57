/** Level of a piece of sound: the largest sample and the root mean square, in decibels below full scale. */
export interface Level {
  readonly peakDb: number;
  readonly rmsDb: number;
  /** True where samples stand at full scale: the sound was larger than could be written down. */
  readonly isClipped: boolean;
}

const FULL_SCALE = 0.9999;
/** What is softer is silence to any microphone. */
const SILENCE_DB = -120;

const decibelsOf = (amplitude: number): number => Math.max(SILENCE_DB, 20 * Math.log10(amplitude));

/** The level of all channels of a piece together. */
export function levelOfPiece(channels: readonly Float32Array[]): Level {
  let [peak, sum, count] = [0, 0, 0];
  for (const channel of channels) {
    for (const sample of channel) {
      const size = Math.abs(sample);
      if (size > peak) peak = size;
      sum += sample * sample;
    }
    count += channel.length;
  }
  return { peakDb: decibelsOf(peak), rmsDb: decibelsOf(Math.sqrt(sum / Math.max(1, count))), isClipped: peak >= FULL_SCALE };
}

/** A note has begun where the level stands so far over the softest heard so far. */
const BEGUN_OVER_FLOOR_DB = 20;
/** It has died away where it stands so little over that floor, or so far below its own beginning, for this long. */
const ENDED_OVER_FLOOR_DB = 4;
const ENDED_BELOW_PEAK_DB = 55;
const QUIET_S = 0.8;
const LONGEST_S = 40;

/**
 * True once a note was struck and has died away: its level is back at the floor of the room, or 55 dB below its beginning, for 0.8 s;
 * or when 40 s have gone. `levelsDb` are root mean squares of pieces that follow each other, each `pieceS` long.
 */
export function hasDiedAway(levelsDb: readonly number[], pieceS: number): boolean {
  if (levelsDb.length * pieceS >= LONGEST_S) return true;
  const floor = Math.min(...levelsDb);
  const peak = Math.max(...levelsDb);
  if (peak - floor < BEGUN_OVER_FLOOR_DB) return false;
  const struckAt = levelsDb.indexOf(peak);
  const quiet = Math.ceil(QUIET_S / pieceS);
  const last = levelsDb.slice(-quiet);
  if (levelsDb.length - struckAt <= quiet || last.length < quiet) return false;
  const before = Math.min(...levelsDb.slice(0, struckAt), peak);
  const enough = Math.max(Math.min(before, floor + 12) + ENDED_OVER_FLOOR_DB, peak - ENDED_BELOW_PEAK_DB);
  return last.every((level) => level <= enough);
}
