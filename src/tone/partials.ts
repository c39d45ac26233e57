import type { Samples } from '#numerics';
import type { Comb } from './comb.ts';
import type { Sounding } from './onset.ts';
import { type HeardPartial, type Line, partialIn } from './partial.ts';
import type { Spectrum, Span } from './spectrum.ts';
import { type StiffFit, partialHzOf, stiffFitOf } from './stiff-law.ts';
import { type Zoomable, basebandOf, ringingS, zoomableOf } from './zoom.ts';

/** A partial with its number and where it stands over the noise. */
export interface NumberedPartial extends HeardPartial {
  readonly n: number;
  readonly frequencyHz: number;
  readonly frequencyUncertaintyHz: number;
  /** Lines far enough apart to be strings of their own; two decays of one string are one. */
  readonly strings: readonly Line[];
}

/** Partials of a note, the window they were taken from, and the law through them. */
export interface HeardString {
  readonly window: Span;
  readonly partials: readonly NumberedPartial[];
  readonly fit: StiffFit | undefined;
  readonly zoomable: Zoomable;
}

const LONGEST_S = 4;
const SHORTEST_S = 0.6;
/** After the thump of the attack. */
const ATTACK_S = 0.05;
/** Half width of the band a partial is looked at in: below the next partial, wide enough for strings that disagree. */
const halfWidthOf = (f0Hz: number): number => Math.min(0.45 * f0Hz, Math.max(20, 0.015 * f0Hz));
/** How far a partial may lie from where the law through its neighbours has it: a share of the pitch, and at most so many cents. */
const EXPECTED_WITHIN = 0.06;
const EXPECTED_WITHIN_CENTS = 15;
/** So many times the scatter of the partials about the law, and two bins. */
const SCATTERS = 5;
const BINS = 2;
/** Partials above the highest of the comb are asked for until this many in a row are missing. */
const MOST_MISSED = 3;
const MOST_PARTIALS = 80;
const HIGHEST_HZ = 16_000;
/** A line is taken for a partial from this level over the noise in the spectrum. */
const ABOVE_DB = 9;
/** And to so far below the strongest line as sixteen bits reach: 20·lg 2⁻¹⁶. Further down stand the edges of the window and the coding of the file. */
const FAINTEST_DB = -96;
/** Strings of one note lie within this of each other. */
const UNISON_CENTS = 20;

/** Window of a note: T = 6·(27.5/f0)^0.4 s, between 0.6 and 4 s, from behind the attack and the ringing of the band. @source OWN */
export function windowOf(f0Hz: number, { onsetS, endS }: Sounding): Span {
  const fromS = onsetS + Math.max(ATTACK_S, ringingS(halfWidthOf(f0Hz)));
  const seconds = Math.min(LONGEST_S, Math.max(SHORTEST_S, 6 * (27.5 / f0Hz) ** 0.4));
  return { fromS, toS: Math.min(endS, fromS + seconds) };
}

/** Follows the string a comb has found: each tooth looked at closely, the law through them, then the partials the law points to. */
export function stringOf(samples: Samples, sounding: Sounding, spectrum: Spectrum, comb: Comb): HeardString {
  const window = windowOf(comb.f0Hz, sounding);
  const halfWidthHz = halfWidthOf(comb.f0Hz);
  const zoomable = zoomableOf(samples, { fromS: Math.max(0, sounding.onsetS - ATTACK_S), toS: window.toS }, ringingS(halfWidthHz));
  const look = (n: number, frequencyHz: number): NumberedPartial | undefined => lookAt(zoomable, { n, frequencyHz, halfWidthHz, window });
  const teeth = comb.teeth.flatMap(({ n, peak }) => look(n, peak.frequencyHz) ?? []);
  const first = stiffFitOf(teeth);
  if (first === undefined || teeth.length < 3) return { window, partials: teeth, fit: first, zoomable };
  const partials = [...teeth, ...pointedTo(first, teeth, spectrum, comb.f0Hz).flatMap(({ n, frequencyHz }) => look(n, frequencyHz) ?? [])].sort((a, b) => a.n - b.n);
  return { window, partials, fit: stiffFitOf(partials), zoomable };
}

interface Look {
  readonly n: number;
  readonly frequencyHz: number;
  readonly halfWidthHz: number;
  readonly window: Span;
}

function lookAt(zoomable: Zoomable, { n, frequencyHz, halfWidthHz, window }: Look): NumberedPartial | undefined {
  const heard = partialIn(basebandOf(zoomable, frequencyHz, halfWidthHz, window));
  if (heard === undefined) return undefined;
  const near = nearMain(heard.lines);
  return { n, ...heard, ...centreOf(near), strings: stringsOf(near, window.toS - window.fromS) };
}

/** Where a partial of several lines stands: their mean, weighted by energy a²/2α; of the lines within 20 cents of the strongest. */
function centreOf(near: readonly Line[]): { readonly frequencyHz: number; readonly frequencyUncertaintyHz: number } {
  const energies = near.map(energyOf);
  const total = energies.reduce((sum, energy) => sum + energy, 0);
  const frequencyHz = near.reduce((sum, line, at) => sum + line.frequencyHz * (energies[at] ?? 0), 0) / total;
  return { frequencyHz, frequencyUncertaintyHz: Math.sqrt(near.reduce((sum, line, at) => sum + (line.frequencyUncertaintyHz * (energies[at] ?? 0)) ** 2, 0)) / total };
}

const SLOWEST_PER_S = 0.1;
const energyOf = ({ amplitude, dampingPerS }: Line): number => amplitude ** 2 / (2 * Math.max(dampingPerS, SLOWEST_PER_S));

function nearMain(lines: readonly Line[]): readonly Line[] {
  const main = lines.reduce((best, line) => (energyOf(line) > energyOf(best) ? line : best));
  return lines.filter(({ frequencyHz }) => Math.abs(1200 * Math.log2(frequencyHz / main.frequencyHz)) < UNISON_CENTS);
}

/** Lines that beat less than a quarter turn within the window are one string with two decays. */
function stringsOf(lines: readonly Line[], seconds: number): readonly Line[] {
  return lines.reduce<readonly Line[]>((strings, line) => {
    const before = strings[strings.length - 1];
    if (before === undefined) return [line];
    const apart = line.frequencyHz - before.frequencyHz;
    if (apart > 0.25 / seconds) return [...strings, line];
    return energyOf(line) > energyOf(before) ? [...strings.slice(0, -1), line] : strings;
  }, []);
}

/** Partials the comb has left out or not reached: the strongest bin close to where the law has them, if it stands over the noise. */
function pointedTo(fit: StiffFit, teeth: readonly NumberedPartial[], spectrum: Spectrum, f0Hz: number): readonly { readonly n: number; readonly frequencyHz: number }[] {
  const taken = new Set(teeth.map(({ n }) => n));
  const highest = Math.max(...taken);
  const within = 2 ** (Math.min(EXPECTED_WITHIN_CENTS, SCATTERS * fit.scatterCents) / 1200) - 1;
  const least = spectrum.power.reduce((most, value) => Math.max(most, value), 0) * 10 ** (FAINTEST_DB / 10);
  const found: { readonly n: number; readonly frequencyHz: number }[] = [];
  for (let n = 1, missed = 0; n <= MOST_PARTIALS && (n <= highest || missed < MOST_MISSED); n++) {
    if (taken.has(n)) continue;
    const placeHz = partialHzOf(fit, n);
    const frequencyHz = placeHz > HIGHEST_HZ ? undefined : lineNear(spectrum, { placeHz, withinHz: Math.min(EXPECTED_WITHIN * f0Hz, within * placeHz + BINS * spectrum.binHz), least });
    if (frequencyHz === undefined) missed += n > highest ? 1 : 0;
    else {
      found.push({ n, frequencyHz });
      missed = 0;
    }
  }
  return found;
}

function lineNear({ binHz, power, floor }: Spectrum, { placeHz, withinHz, least }: { readonly placeHz: number; readonly withinHz: number; readonly least: number }): number | undefined {
  let best = -1;
  for (let k = Math.ceil((placeHz - withinHz) / binHz); k <= (placeHz + withinHz) / binHz && k < power.length; k++) {
    if ((power[k] ?? 0) > (power[best] ?? 0)) best = k;
  }
  if (best < 1) return undefined;
  const isPeak = (power[best] ?? 0) >= (power[best - 1] ?? 0) && (power[best] ?? 0) >= (power[best + 1] ?? 0);
  return isPeak && (power[best] ?? 0) > Math.max(least, 10 ** (ABOVE_DB / 10) * (floor[best] ?? 0)) ? best * binHz : undefined;
}
