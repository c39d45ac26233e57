import type { OctaveType } from '#instrument';

/** The partial of the upper note that an octave type listens to; the lower note's is twice that. */
export function upperPartialOf(type: OctaveType): number {
  return { '2:1': 1, '4:2': 2, '6:3': 3 }[type];
}

/** Keys in an octave. */
export const OCTAVE = 12;
