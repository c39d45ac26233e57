/** Mean energy of each block of so many samples, in decibels; a rest that fills no block is left out. The energy of a sample is asked for, so that a long take is not copied. */
export function blockLevelsOf(length: number, block: number, energyAt: (sample: number) => number): readonly number[] {
  return Array.from({ length: Math.floor(length / block) }, (_, index) => {
    let sum = 0;
    for (let at = index * block; at < (index + 1) * block; at += 1) sum += energyAt(at);
    return 10 * Math.log10(sum / block + Number.MIN_VALUE);
  });
}
