import type { HeardNote } from '../heard-note.ts';
import { type NoiseFloor, floorPowerOf } from './noise-floor.ts';
import type { Figure } from './partial-descriptors.ts';
import { type ToneWindow, bandPowerOf, toneWindowOf } from './tone-window.ts';

/** The window of the attack, from the onset. */
const WINDOW_S = 0.06;
/** So many widths 1/T on either side belong to a partial. */
const PARTIAL_WIDTHS = 3;
const LOWEST_HZ = 30;
const HIGHEST_HZ = 10_000;
/** Below this pitch the window does not part partials. */
export const LOWEST_ATTACK_HZ = 200;

/**
 * Noise of the attack: of the energy from 30 Hz to 10 kHz in the first 60 ms (Hann), the share that lies further than 3/T from every
 * partial, in dB, the steady noise taken off. Undefined below 200 Hz, or where nothing is left.
 * @source OWN
 */
export function attackNoiseOf(note: HeardNote, floor: NoiseFloor): Figure | undefined {
  const window = note.f0Hz < LOWEST_ATTACK_HZ ? undefined : toneWindowOf(note.samples, note.onsetS, WINDOW_S);
  return window === undefined ? undefined : betweenPartialsOf(note, window, floor);
}

/**
 * Sound between the partials in any window, in dB of the whole from 30 Hz to 10 kHz: what buzzes, rattles or blows while the string rings.
 * @source OWN
 */
export function betweenPartialsOf(note: HeardNote, window: ToneWindow, floor: NoiseFloor): Figure | undefined {
  const whole = bandPowerOf(window, LOWEST_HZ, HIGHEST_HZ);
  const gaps = gapsBetween(note, PARTIAL_WIDTHS / window.seconds);
  const width = gaps.reduce((sum, [from, to]) => sum + to - from, 0);
  const steady = gaps.reduce((sum, [from, to]) => sum + floorPowerOf(floor, from, to), 0);
  const between = gaps.reduce((sum, [from, to]) => sum + bandPowerOf(window, from, to), 0) - steady;
  if (between <= 0 || whole <= 0 || width <= 0) return undefined;
  const doubt = (10 / Math.LN10) * Math.hypot(Math.sqrt(1 / Math.max(1, width * window.seconds)), (0.2 * steady) / between);
  return { value: 10 * Math.log10(between / whole), uncertainty: doubt };
}

/** Stretches of frequency further than `reachHz` from every partial; beyond the highest heard, partials are led on by the stiff law. */
function gapsBetween({ partials, f0Hz }: HeardNote, reachHz: number): readonly (readonly [number, number])[] {
  const places = ledOn(partials.map(({ n, frequencyHz }) => ({ n, frequencyHz })), f0Hz).filter((hz) => hz < HIGHEST_HZ + reachHz);
  const edges = [LOWEST_HZ, ...places.flatMap((hz) => [hz - reachHz, hz + reachHz]), HIGHEST_HZ];
  return edges.flatMap((from, index): readonly (readonly [number, number])[] => {
    const to = edges[index + 1];
    return index % 2 === 1 || to === undefined || to <= from ? [] : [[from, Math.min(to, HIGHEST_HZ)]];
  });
}

function ledOn(partials: HeardNote['partials'], f0Hz: number): readonly number[] {
  const byNumber = new Map(partials.map(({ n, frequencyHz }) => [n, frequencyHz]));
  const last = partials.at(-1);
  const first = partials[0];
  const squared = ({ n, frequencyHz }: { readonly n: number; readonly frequencyHz: number }): number => (frequencyHz / n) ** 2;
  const bend = last === undefined || first === undefined || last.n === first.n ? 0 : (squared(last) - squared(first)) / (last.n ** 2 - first.n ** 2);
  const base = first === undefined ? f0Hz ** 2 : squared(first) - bend * first.n ** 2;
  const lawHz = (n: number): number => n * Math.sqrt(Math.max(base + bend * n * n, (0.5 * f0Hz) ** 2));
  const places: number[] = [];
  for (let n = 1; n <= 400 && (places.at(-1) ?? 0) < HIGHEST_HZ; n++) places.push(byNumber.get(n) ?? lawHz(n));
  return places;
}
