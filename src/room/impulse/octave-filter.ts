import type { Hertz } from '#units';

/** A second-order section with one zero at nought and one at half the sampling rate: y = g·(x − x₂) − a₁y₁ − a₂y₂. */
interface Section {
  readonly gain: number;
  readonly a1: number;
  readonly a2: number;
}

interface Complex {
  readonly re: number;
  readonly im: number;
}

/** Edges of an octave lie this factor either side of its middle. @source IEC-61260 */
const HALF_OCTAVE = 10 ** 0.15;
/** Poles of a Butterworth low-pass of third order, those on and above the real axis. @source BUTTERWORTH-1930 */
const POLES: readonly Complex[] = [{ re: -1, im: 0 }, { re: -0.5, im: Math.sqrt(3) / 2 }];

/** Highest frequency an octave around a middle takes in. Hertz. */
export const upperEdgeOf = (midHz: Hertz): number => midHz * HALF_OCTAVE;

/**
 * An octave band-pass of six poles: Butterworth, made over from low-pass by s → (s² + ω₀²)/(B·s), then to samples by the bilinear
 * rule with both edges kept in place. Its upper edge lies below half the sampling rate.
 * @source IEC-61260, BUTTERWORTH-1930
 */
export function octaveSectionsOf(midHz: Hertz, sampleRateHz: number): readonly Section[] {
  const [low, high] = [midHz / HALF_OCTAVE, midHz * HALF_OCTAVE].map((edge) => Math.tan((Math.PI * edge) / sampleRateHz)) as [number, number];
  const [width, centre] = [high - low, low * high];
  const poles = POLES.flatMap((pole) => bandPolesOf(pole, width, centre));
  const sections = poles.map(({ re, im }) => {
    const below = (1 - re) ** 2 + im ** 2;
    return { gain: 1, a1: (-2 * (1 - re ** 2 - im ** 2)) / below, a2: ((1 + re) ** 2 + im ** 2) / below };
  });
  const middle = 2 * Math.atan(Math.sqrt(centre));
  return sections.map((section) => ({ ...section, gain: 1 / responseAt(section, middle) }));
}

/** The poles above the real axis that one low-pass pole turns into: (pB ± √((pB)² − 4ω₀²))/2. */
function bandPolesOf(pole: Complex, width: number, centre: number): readonly Complex[] {
  const [re, im] = [pole.re * width, pole.im * width];
  const root = rootOf({ re: re ** 2 - im ** 2 - 4 * centre, im: 2 * re * im });
  const both = [{ re: (re + root.re) / 2, im: (im + root.im) / 2 }, { re: (re - root.re) / 2, im: (im - root.im) / 2 }];
  return pole.im === 0 ? both.slice(0, 1) : both;
}

function rootOf({ re, im }: Complex): Complex {
  const length = Math.hypot(re, im);
  return { re: Math.sqrt((length + re) / 2), im: Math.sign(im || 1) * Math.sqrt((length - re) / 2) };
}

/** How much a section lets through at an angle of 0 to π, its own gain being 1. */
function responseAt({ a1, a2 }: Section, angle: number): number {
  const above = Math.hypot(1 - Math.cos(2 * angle), Math.sin(2 * angle));
  const below = Math.hypot(1 + a1 * Math.cos(angle) + a2 * Math.cos(2 * angle), a1 * Math.sin(angle) + a2 * Math.sin(2 * angle));
  return above / below;
}

/** A signal run backwards through an octave band, so that the filter’s own ringing comes before the sound, not after it. @source JACOBSEN-1987 */
export function filteredBackwards(signal: Float64Array, midHz: Hertz, sampleRateHz: number): Float64Array {
  let samples = Float64Array.from(signal).reverse();
  for (const section of octaveSectionsOf(midHz, sampleRateHz)) samples = passed(samples, section);
  return samples.reverse();
}

function passed(signal: Float64Array<ArrayBuffer>, { gain, a1, a2 }: Section): Float64Array<ArrayBuffer> {
  const out = new Float64Array(signal.length);
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  for (let at = 0; at < signal.length; at += 1) {
    const x = signal[at] ?? 0;
    const y = gain * (x - x2) - a1 * y1 - a2 * y2;
    out[at] = y;
    [x2, x1, y2, y1] = [x1, x, y1, y];
  }
  return out;
}
