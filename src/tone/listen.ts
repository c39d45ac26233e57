import { type Samples, medianOf } from '#numerics';
import { type Compass, type KeyNumber, compass88, equalTemperedHzOf, keyCountOf } from '#instrument';
import { type Cents, type Hertz, type Seconds, cents, hertz, seconds } from '#units';
import { isClipped } from './clipping.ts';
import { type Comb, bestCombOf, expectedInharmonicityOf, leftBy } from './comb.ts';
import { humIn } from './hum.ts';
import { TONE_METHOD } from './method.ts';
import { type Sounding, soundingOf } from './onset.ts';
import type { Line } from './partial.ts';
import { type HeardString, type NumberedPartial, stringOf } from './partials.ts';
import { type Peak, peaksOf, spectrumOfSpan } from './spectrum.ts';
import { type StiffFit, type StiffLaw, partialHzOf } from './stiff-law.ts';

/** Why no note was named. */
export const nothingReasons = ['unusable', 'silence', 'short', 'noise', 'no-string'] as const;
export type NothingReason = (typeof nothingReasons)[number];

/** What to know before believing a figure. */
export const toneWarnings = ['clipped', 'hum', 'noisy', 'two-notes', 'wrong-key', 'few-partials', 'odd-stiffness', 'unisons-apart', 'damped'] as const;
export type ToneWarning = (typeof toneWarnings)[number];

/** Law behind f0 and B; with one partial alone the B expected of the pitch stands in, and none is reported. */
export type FitMethod = StiffLaw | 'expected-stiffness';

export interface ToneQuality {
  /** Mean power of the sound in its first 2 s over that of the noise between the partials, whole band. */
  readonly snrDb?: number;
  readonly clipped: boolean;
  readonly warnings: readonly ToneWarning[];
}

export interface UnisonLine {
  readonly offsetCents: Cents;
  readonly levelDb: number;
  readonly dampingPerS: number;
}

export interface TonePartial {
  readonly n: number;
  readonly frequencyHz: Hertz;
  readonly frequencyUncertaintyHz: Hertz;
  /** Amplitude at the begin of the window, decibels under full scale. */
  readonly levelDb: number;
  /** Beside the law; and 0 to 1 how much it counted in its fit. */
  readonly residualCents?: Cents;
  readonly weight?: number;
  /** Lines of single strings, where there is more than one. */
  readonly lines: readonly UnisonLine[];
}

/** A note as heard. */
export interface ToneNote {
  readonly heard: true;
  readonly key: KeyNumber;
  readonly f0Hz: Hertz;
  readonly f0UncertaintyHz: Hertz;
  /** f0 against equal temperament of the key. */
  readonly offsetCents: Cents;
  readonly inharmonicityB?: number;
  readonly inharmonicityUncertainty?: number;
  readonly secondTermC?: number;
  readonly fitMethod: FitMethod;
  readonly fittedPartials: readonly number[];
  readonly scatterCents: Cents;
  readonly degreesOfFreedom: number;
  /** Where the law has the first partial, heard or not. */
  readonly firstPartialHz: Hertz;
  readonly unisonSpreadCents: Cents;
  readonly partials: readonly TonePartial[];
  readonly onsetS: Seconds;
  readonly endS: Seconds;
  readonly windowFromS: Seconds;
  readonly windowToS: Seconds;
  readonly quality: ToneQuality;
  readonly methodVersion: number;
}

/** No note, and why. */
export interface NothingHeard {
  readonly heard: false;
  readonly reason: NothingReason;
  readonly quality: ToneQuality;
  readonly methodVersion: number;
}

export interface ListenOptions {
  /** The key somebody says it is: compared with what is heard, never obeyed. */
  readonly key?: KeyNumber;
  readonly compass?: Compass;
  readonly a4Hz?: number;
}

/** After the thump of the attack. */
const SETTLED_S = 0.03;
const LOOK_S = 1.36;
/** The noise is looked for from here on, for this long. */
const NOISE_FROM_S = 0.3;
const NOISE_S = 0.68;
const LEAST_S = 0.25;
const LOWEST_RATE_HZ = 4000;
/** Three partials of a low string, or two of a high one, that stand well over the noise. */
const LEAST_SCORE = 12;
/** What damped lines must explain around its strongest partials: this share of their energy, or of most of them that share. */
const LEAST_EXPLAINED = 0.85;
const LEAST_EXPLAINED_OF_MOST = 0.9;
/** From so many partials beyond those the law needs, its stiffness must show: so many standard uncertainties. A voice or a pipe has none. */
const STIFF_FROM = 3;
const SHOWN = 3;
/** A string follows its law: more scatter than this is a voice or a machine. */
const MOST_SCATTER_CENTS = 15;
const ODD_STIFFNESS = 3;
const NO_STRING_STIFFNESS = 12;
const NOISY_DB = 15;
const UNISONS_APART_CENTS = 2;
/** A second comb: this much energy beside the first, or as much of its score. */
const SECOND_SHARE = 0.2;
const SECOND_DB = -25;

/**
 * Listens to one struck note: its key, f0 and B with their law, set of partials and uncertainty from the scatter about the law, partials
 * with their lines, and how far the recording can be trusted. Where there is no string to be heard the answer says why. @source OWN
 */
export function listenToNote(samples: Samples, { key, compass = compass88, a4Hz = 440 }: ListenOptions = {}): ToneNote | NothingHeard {
  const clipped = isClipped(samples);
  const nothing = (reason: NothingReason, more: Partial<ToneQuality> = {}): NothingHeard => ({ heard: false, reason, quality: { clipped, warnings: clipped ? ['clipped'] : [], ...more }, methodVersion: TONE_METHOD });
  if (!isUsable(samples)) return nothing('unusable');
  const sounding = soundingOf(samples);
  if (sounding === undefined) return nothing('silence');
  if (sounding.endS - sounding.onsetS < LEAST_S) return nothing('short');
  const spectrum = spectrumOfSpan(samples, { fromS: sounding.onsetS + SETTLED_S, toS: Math.min(sounding.endS, sounding.onsetS + LOOK_S) });
  const snrDb = snrDbOf(samples, sounding);
  const peaks = peaksOf(spectrum);
  const comb = bestCombOf(peaks);
  if (comb === undefined || comb.score < LEAST_SCORE) return nothing('noise', { snrDb });
  const heard = stringOf(samples, sounding, spectrum, comb);
  const pitch = pitchOf(heard);
  if (pitch === undefined || !isString(heard, pitch)) return nothing('no-string', { snrDb });
  const place = keyNear(compass, a4Hz, pitch);
  const found = { clipped, snrDb, hum: humIn(heard.zoomable, heard.window) !== undefined, two: hasSecond(comb, peaks), wrong: key !== undefined && key !== place };
  return noteOf({ samples, sounding, heard, pitch, found, key: place, offsetFrom: equalTemperedHzOf(compass, place, a4Hz) });
}

function isUsable({ sampleRateHz, channels }: Samples): boolean {
  return sampleRateHz >= LOWEST_RATE_HZ && channels.length > 0 && channels.every(isFinite);
}

function isFinite(channel: Float64Array): boolean {
  let sum = 0;
  for (let at = 0; at < channel.length; at++) sum += 0 * (channel[at] ?? 0);
  return sum === 0;
}

/** Mean power over the first 2 s against the noise between the partials, all channels together; looked at once the attack has died away, without edges. */
function snrDbOf(samples: Samples, { onsetS, endS }: Sounding): number {
  const { sampleRateHz, channels } = samples;
  const fromS = Math.min(onsetS + NOISE_FROM_S, (onsetS + endS) / 2);
  const { floor } = spectrumOfSpan(samples, { fromS, toS: Math.min(endS, fromS + NOISE_S) }, NOISE_S);
  const [from, to] = [Math.round(onsetS * sampleRateHz), Math.round(Math.min(endS, onsetS + 2) * sampleRateHz)];
  const power = channels.reduce((sum, channel) => sum + channel.subarray(from, to).reduce((part, x) => part + x * x, 0), 0) / (to - from);
  const noise = floor.reduce((sum, value) => sum + value, 0) / floor.length;
  return Math.min(150, 10 * Math.log10(Math.max(power / Math.max(noise, 1e-30) - 1, 1e-3)));
}

/** f0, B and C as they are reported. */
interface Pitch extends Pick<StiffFit, 'f0Hz' | 'inharmonicityB' | 'secondTermC' | 'f0UncertaintyHz'> {
  readonly fit: StiffFit | undefined;
}

/** From the law through the partials; of one partial alone with the stiffness expected, sure of it within a factor of two. */
function pitchOf({ partials, fit }: HeardString): Pitch | undefined {
  const [only] = partials;
  if (fit !== undefined) return { ...fit, fit };
  if (only?.n !== 1) return undefined;
  const inharmonicityB = expectedInharmonicityOf(only.frequencyHz);
  const f0Hz = only.frequencyHz / Math.sqrt(1 + inharmonicityB);
  return { f0Hz: hertz(f0Hz), inharmonicityB, secondTermC: 0, f0UncertaintyHz: hertz(f0Hz * inharmonicityB * 0.35 + only.frequencyUncertaintyHz), fit: undefined };
}

/** Whether it behaves as a struck string: lines that die away explain it, they follow the law, and the law has a stiffness a string can have. */
function isString({ partials }: HeardString, { f0Hz, inharmonicityB, fit }: Pitch): boolean {
  if (!isExplained(partials)) return false;
  if (fit === undefined) return true;
  const expected = expectedInharmonicityOf(f0Hz);
  const shows = fit.degreesOfFreedom < STIFF_FROM || inharmonicityB > SHOWN * fit.inharmonicityUncertainty;
  return shows && fit.scatterCents < MOST_SCATTER_CENTS && inharmonicityB < NO_STRING_STIFFNESS * expected && inharmonicityB > expected / NO_STRING_STIFFNESS;
}

const STRONGEST = 6;

function isExplained(partials: readonly NumberedPartial[]): boolean {
  const strongest = [...partials].sort((a, b) => b.single.amplitude - a.single.amplitude).slice(0, STRONGEST);
  const sumOf = (of: (partial: NumberedPartial) => number): number => strongest.reduce((sum, partial) => sum + partial.single.amplitude ** 2 * of(partial), 0);
  const share = sumOf(({ explained }) => explained) / sumOf(() => 1);
  return share > LEAST_EXPLAINED || medianOf(strongest.map((partial) => partial.explained)) > LEAST_EXPLAINED_OF_MOST;
}

/** The key of the compass whose equal-tempered pitch is nearest to the first partial. */
function keyNear(compass: Compass, a4Hz: number, pitch: Pitch): KeyNumber {
  const midi = 69 + 12 * Math.log2(partialHzOf(pitch, 1) / a4Hz);
  return Math.min(keyCountOf(compass), Math.max(1, Math.round(midi) - compass.firstMidi + 1));
}

/** Whether what the comb leaves is another note. */
function hasSecond(comb: Comb, peaks: readonly Peak[]): boolean {
  const second = bestCombOf(leftBy(comb, peaks));
  if (second === undefined) return false;
  const energy = ({ teeth }: Comb): number => teeth.reduce((sum, { peak }) => sum + peak.power, 0);
  return second.score > SECOND_SHARE * comb.score && 10 * Math.log10(energy(second) / energy(comb)) > SECOND_DB;
}

interface Found {
  readonly clipped: boolean;
  readonly snrDb: number;
  readonly hum: boolean;
  readonly two: boolean;
  readonly wrong: boolean;
}

interface Heard {
  readonly samples: Samples;
  readonly sounding: Sounding;
  readonly heard: HeardString;
  readonly pitch: Pitch;
  readonly found: Found;
  readonly key: KeyNumber;
  readonly offsetFrom: Hertz;
}

function noteOf({ samples, sounding, heard, pitch, found, key, offsetFrom }: Heard): ToneNote {
  const { fit } = pitch;
  const partials = heard.partials.map((partial) => tonePartialOf(partial, fit));
  const unisonSpreadCents = spreadOf(partials);
  const lengthS = (samples.channels[0]?.length ?? 0) / samples.sampleRateHz;
  const damped = sounding.endS < lengthS - 0.1;
  return {
    heard: true, key, f0Hz: pitch.f0Hz, f0UncertaintyHz: pitch.f0UncertaintyHz, offsetCents: cents(1200 * Math.log2(pitch.f0Hz / offsetFrom)),
    ...(fit === undefined ? {} : { inharmonicityB: fit.inharmonicityB, inharmonicityUncertainty: fit.inharmonicityUncertainty, ...(fit.law === 'two-term' ? { secondTermC: fit.secondTermC } : {}) }),
    fitMethod: fit?.law ?? 'expected-stiffness',
    fittedPartials: fit?.partials.filter(({ weight }) => weight > 0).map(({ n }) => n) ?? [1],
    scatterCents: fit?.scatterCents ?? cents(0), degreesOfFreedom: fit?.degreesOfFreedom ?? 0,
    firstPartialHz: partialHzOf(pitch, 1), unisonSpreadCents, partials,
    onsetS: seconds(sounding.onsetS), endS: seconds(sounding.endS), windowFromS: seconds(heard.window.fromS), windowToS: seconds(heard.window.toS),
    quality: { snrDb: found.snrDb, clipped: found.clipped, warnings: warningsOf(found, pitch, unisonSpreadCents, damped) },
    methodVersion: TONE_METHOD,
  };
}

function warningsOf({ clipped, hum, snrDb, two, wrong }: Found, { f0Hz, inharmonicityB, fit }: Pitch, spread: number, damped: boolean): readonly ToneWarning[] {
  const stiffness = inharmonicityB / expectedInharmonicityOf(f0Hz);
  const odd = fit !== undefined && (stiffness > ODD_STIFFNESS || stiffness < 1 / ODD_STIFFNESS);
  const told: Readonly<Record<ToneWarning, boolean>> = {
    clipped, hum, noisy: snrDb < NOISY_DB, 'two-notes': two, 'wrong-key': wrong,
    'few-partials': (fit?.degreesOfFreedom ?? 0) < 2, 'odd-stiffness': odd, 'unisons-apart': spread > UNISONS_APART_CENTS, damped,
  };
  return toneWarnings.filter((warning) => told[warning]);
}

const levelDbOf = ({ amplitude }: Line): number => 20 * Math.log10(Math.max(amplitude, 1e-12));

function tonePartialOf({ n, frequencyHz, frequencyUncertaintyHz, single, strings }: NumberedPartial, fit: StiffFit | undefined): TonePartial {
  const fitted = fit?.partials.find((row) => row.n === n);
  return {
    n, frequencyHz: hertz(frequencyHz), frequencyUncertaintyHz: hertz(frequencyUncertaintyHz), levelDb: levelDbOf(single),
    ...(fitted === undefined ? {} : { residualCents: fitted.residualCents, weight: fitted.weight }),
    lines: strings.length < 2 ? [] : strings.map((line): UnisonLine => ({ offsetCents: cents(1200 * Math.log2(line.frequencyHz / frequencyHz)), levelDb: levelDbOf(line), dampingPerS: line.dampingPerS })),
  };
}

/** Highest partial whose strings the spread of the unison is read from. */
const UNISON_PARTIALS = 6;

/** How far the strings of a note lie apart: twice the standard deviation of their lines, weighted by power, the median over the lowest partials. */
function spreadOf(partials: readonly TonePartial[]): Cents {
  const spreads = partials.filter(({ n }) => n <= UNISON_PARTIALS).map(({ lines }) => {
    const powers = lines.map(({ levelDb }) => 10 ** (levelDb / 10));
    const total = powers.reduce((sum, power) => sum + power, 0);
    const moment = (of: (offset: number) => number): number => lines.reduce((sum, { offsetCents }, at) => sum + (powers[at] ?? 0) * of(offsetCents), 0) / total;
    return lines.length < 2 ? 0 : 2 * Math.sqrt(Math.max(0, moment((x) => x * x) - moment((x) => x) ** 2));
  });
  return cents(spreads.length === 0 ? 0 : medianOf(spreads));
}
