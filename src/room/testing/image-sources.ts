/** A box with walls that take in the same share, by sources mirrored in its walls: a second way to a room's decay. @source ALLEN-BERKLEY-1979 */
export interface MirroredBox {
  /** Metres. */
  readonly sides: readonly [number, number, number];
  readonly absorption: number;
  readonly speedMPerS: number;
}

/** Energy that reaches a listener in steps of time, from every mirror image up to a time. */
export function energiesOf({ sides, absorption, speedMPerS }: MirroredBox, source: readonly number[], listener: readonly number[], untilS: number, stepS: number): Float64Array {
  const energies = new Float64Array(Math.ceil(untilS / stepS));
  const reach = untilS * speedMPerS;
  const lines = sides.map((side, axis) => imagesOf(side, source[axis] ?? 0, listener[axis] ?? 0, reach));
  for (const x of lines[0] ?? []) for (const y of lines[1] ?? []) for (const z of lines[2] ?? []) {
    const distance = Math.hypot(x.offset, y.offset, z.offset);
    const step = Math.floor(distance / speedMPerS / stepS);
    if (step < energies.length) energies[step] = (energies[step] ?? 0) + (1 - absorption) ** (x.hits + y.hits + z.hits) / distance ** 2;
  }
  return energies;
}

function imagesOf(side: number, source: number, listener: number, reach: number): readonly { readonly offset: number; readonly hits: number }[] {
  const most = Math.ceil(reach / (2 * side)) + 1;
  return Array.from({ length: 2 * most + 1 }, (_, index) => index - most).flatMap((n) => [
    { offset: 2 * n * side + source - listener, hits: Math.abs(2 * n) },
    { offset: 2 * n * side - source - listener, hits: Math.abs(2 * n - 1) },
  ]).filter(({ offset }) => Math.abs(offset) <= reach);
}

/** Time for 60 dB from the slope between −5 and −25 dB of the energy summed backwards. @source SCHROEDER-1965 */
export function decayOf(energies: Float64Array, stepS: number): number {
  const left = Float64Array.from(energies);
  for (let step = left.length - 2; step >= 0; step -= 1) left[step] = (left[step] ?? 0) + (left[step + 1] ?? 0);
  const levels = Array.from(left, (energy) => 10 * Math.log10(energy / (left[0] ?? 1)));
  const steps = levels.flatMap((level, step) => (level <= -5 && level >= -25 ? [step] : []));
  const [first = 0, last = 1] = [steps[0], steps.at(-1)];
  return (-60 * (last - first) * stepS) / ((levels[last] ?? 0) - (levels[first] ?? 0));
}

/** Directions over an eighth of the sphere, evenly by solid angle, as shares along the three axes. */
const directions: readonly (readonly [number, number, number])[] = Array.from({ length: 60 * 60 }, (_, index) => {
  const [up, round] = [(Math.floor(index / 60) + 0.5) / 60, (((index % 60) + 0.5) / 60) * (Math.PI / 2)];
  const flat = Math.sqrt(1 - up ** 2);
  return [flat * Math.cos(round), flat * Math.sin(round), up];
});

/** The same decay with the mirror images taken as a continuum: rays keep their direction and meet each pair of walls |u|·c/L times a second. @source OWN the limit of many images */
export function keptDirectionsOf({ sides, absorption, speedMPerS }: MirroredBox, untilS: number, stepS: number): Float64Array {
  const perSecond = directions.map((u) => -Math.log(1 - absorption) * speedMPerS * sides.reduce((hits, side, axis) => hits + (u[axis] ?? 0) / side, 0));
  return Float64Array.from({ length: Math.ceil(untilS / stepS) }, (_, step) => perSecond.reduce((sum, rate) => sum + Math.exp(-rate * (step + 0.5) * stepS), 0) / perSecond.length);
}
