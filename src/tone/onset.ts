import type { Samples } from '#numerics';

/** Length of the blocks an attack is looked for in. */
const BLOCK_S = 0.002;
/** The attack is the first block whose energy comes within this of the loudest. */
const BELOW_LOUDEST_DB = 20;
/** A string let go by its key falls faster than this; a struck one never does. */
const DAMPED_DB_PER_S = 400;
const SMOOTH_BLOCKS = 10;
/** A beat comes back within this time; a damped string does not. */
const STAYS_BLOCKS = 100;

/** Where a note begins, and where it ends: by its damper or by the end of the recording. */
export interface Sounding {
  readonly onsetS: number;
  readonly endS: number;
}

/** Energy of each block of 2 ms, all channels together. */
function blockEnergiesOf({ sampleRateHz, channels }: Samples): Float64Array {
  const block = Math.max(1, Math.round(BLOCK_S * sampleRateHz));
  const energies = new Float64Array(Math.floor((channels[0]?.length ?? 0) / block));
  for (const channel of channels) {
    for (let index = 0; index < energies.length; index++) {
      let energy = 0;
      for (let at = index * block; at < (index + 1) * block; at++) energy += (channel[at] ?? 0) ** 2;
      energies[index] = (energies[index] ?? 0) + energy;
    }
  }
  return energies;
}

/**
 * Where the note begins and ends. Begin: the first block of 2 ms within 20 dB of the loudest. End: where the level, over 20 ms, falls
 * by more than a damper's rate, or the end of the recording. `undefined` where nothing is heard at all. @source OWN
 */
export function soundingOf(samples: Samples): Sounding | undefined {
  const energies = blockEnergiesOf(samples);
  const loudest = energies.reduce((most, energy) => Math.max(most, energy), 0);
  if (loudest === 0) return undefined;
  const first = energies.findIndex((energy) => energy >= loudest * 10 ** (-BELOW_LOUDEST_DB / 10));
  const last = dampedAt(energies, first) ?? energies.length;
  return { onsetS: first * BLOCK_S, endS: last * BLOCK_S };
}

/** The block at which the damper falls, if it does: two stretches of 20 ms, 40 ms apart, differ by more than a damper's rate, and it stays so for 200 ms. */
function dampedAt(energies: Float64Array, first: number): number | undefined {
  const gap = 2 * SMOOTH_BLOCKS;
  const ratio = 10 ** ((-DAMPED_DB_PER_S * gap * BLOCK_S) / 10);
  const sums = runningSumsOf(energies);
  const stretch = (at: number): number => (sums[at + SMOOTH_BLOCKS] ?? 0) - (sums[at] ?? 0);
  for (let at = first + 5 * SMOOTH_BLOCKS; at + gap + SMOOTH_BLOCKS <= energies.length; at++) {
    if (stretch(at + gap) >= ratio * stretch(at)) continue;
    let loudest = 0;
    for (let later = at + gap; later < at + gap + STAYS_BLOCKS; later++) loudest = Math.max(loudest, stretch(later));
    if (loudest < ratio * stretch(at)) return at + SMOOTH_BLOCKS;
  }
  return undefined;
}

function runningSumsOf(list: Float64Array): Float64Array {
  const sums = new Float64Array(list.length + 1);
  for (let at = 0; at < list.length; at++) sums[at + 1] = (sums[at] ?? 0) + (list[at] ?? 0);
  return sums;
}
