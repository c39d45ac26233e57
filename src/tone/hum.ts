import { partialIn } from './partial.ts';
import type { Span } from './spectrum.ts';
import { type Zoomable, basebandOf } from './zoom.ts';

const MAINS_HZ = [50, 60];
const HARMONICS = [1, 2, 3, 4, 5];
const HALF_WIDTH_HZ = 5;
/** Mains keep their frequency within this share, and do not die away. */
const STEADY_SHARE = 0.004;
const STEADY_PER_S = 0.25;
const EXPLAINED = 0.9;
const LEAST_HARMONICS = 2;

/** Mains hum in a recording: lines at two or more multiples of 50 or 60 Hz that do not die away. @source OWN */
export function humIn(zoomable: Zoomable, window: Span): number | undefined {
  return MAINS_HZ.find((mains) => HARMONICS.filter((harmonic) => {
    const heard = partialIn(basebandOf(zoomable, harmonic * mains, HALF_WIDTH_HZ, window), 1);
    if (heard === undefined) return false;
    const { frequencyHz, dampingPerS } = heard.single;
    return heard.explained > EXPLAINED && Math.abs(frequencyHz / (harmonic * mains) - 1) < STEADY_SHARE && Math.abs(dampingPerS) < STEADY_PER_S;
  }).length >= LEAST_HARMONICS);
}
