import type { Samples } from '#numerics';
import { type Dice, diceOf } from './dice.ts';

/** What a made-up note is like. Only pitch and seed must be said. */
export interface SyntheticSpec {
  readonly seed: number;
  readonly f0Hz: number;
  /** fₙ = n·f0·√(1 + B·n² + C·n⁴). */
  readonly inharmonicityB?: number;
  readonly secondTermC?: number;
  /** Scatter of each partial about the law, standard deviation. */
  readonly jitterCents?: number;
  readonly partials?: number;
  readonly partialsBelowHz?: number;
  readonly slopeDbPerOctave?: number;
  /** Where the hammer strikes, as a share of the string; 0 for no notches. */
  readonly strikePoint?: number;
  /** T60 of the first partial of each string; shorter up the partials as (f/f0)^−0.6. */
  readonly t60S?: number;
  /** A second, slower decay: how far below the first it starts, and how many times slower it is. */
  readonly late?: { readonly levelDb: number; readonly slower: number };
  /** One entry a string: its detune. */
  readonly unisonCents?: readonly number[];
  /** Thump of the action and the board at the attack, peak against the peak of the tone. */
  readonly knockDb?: number;
  readonly hum?: { readonly frequencyHz: number; readonly levelDb: number; readonly harmonics: number };
  /** Mean power of the tone in its first 2 s over the power of white noise in the whole band. */
  readonly snrDb?: number;
  readonly stereo?: boolean;
  readonly leadS?: number;
  readonly seconds?: number;
  readonly sampleRateHz?: number;
  readonly peak?: number;
}

/** One damped cosine of the truth: a·e^(−αt)·cos(2πft + φ) from the onset on, in one channel. */
export interface SyntheticLine {
  readonly n: number;
  readonly frequencyHz: number;
  readonly amplitude: number;
  readonly phase: number;
  readonly dampingPerS: number;
}

export interface SyntheticNote {
  readonly samples: Samples;
  readonly onsetS: number;
  /** By channel. */
  readonly lines: readonly (readonly SyntheticLine[])[];
  readonly partialsHz: readonly number[];
  /** Standard deviation of the noise in each channel. */
  readonly noise: number;
}

const LN_1000 = Math.log(1000);
const gain = (levelDb: number): number => 10 ** (levelDb / 20);

/** Frequency of partial n of a stiff string. fₙ = n·f0·√(1 + B·n² + C·n⁴) */
export function stiffPartialHz(f0Hz: number, inharmonicityB: number, n: number, secondTermC = 0): number {
  return n * f0Hz * Math.sqrt(1 + inharmonicityB * n ** 2 + secondTermC * n ** 4);
}

/** A struck note whose every figure is known. */
export function syntheticNote(spec: SyntheticSpec): SyntheticNote {
  const { sampleRateHz = 48_000, seconds = 4, leadS = 0.2, peak = 0.5, stereo = false } = spec;
  const dice = diceOf(spec.seed);
  const partialsHz = partialsOf(spec, dice);
  const count = Math.round(seconds * sampleRateHz);
  const onset = Math.round(leadS * sampleRateHz);
  const raw = (stereo ? [0, 1] : [0]).map(() => linesOf(spec, partialsHz, dice));
  const tones = raw.map((lines) => rungOf(lines, { count, onset, sampleRateHz }));
  const scale = peak / Math.max(...tones.map(peakOf));
  const noise = noiseOf(spec, tones.map((tone) => tone.map((x) => x * scale)), onset, sampleRateHz);
  const channels = tones.map((tone) => {
    const out = tone.map((x) => x * scale);
    knock(out, spec, { dice, onset, sampleRateHz, peak });
    hum(out, spec, { dice, sampleRateHz, peak });
    return noise === 0 ? out : out.map((x) => x + noise * dice.normal());
  });
  const lines = raw.map((list) => list.map((line) => ({ ...line, amplitude: line.amplitude * scale })));
  return { samples: { sampleRateHz, channels }, onsetS: onset / sampleRateHz, lines, partialsHz, noise };
}

function partialsOf({ f0Hz, inharmonicityB = 0, secondTermC = 0, jitterCents = 0, partials = 40, partialsBelowHz = 12_000 }: SyntheticSpec, dice: Dice): readonly number[] {
  const all = Array.from({ length: partials }, (_, index) => stiffPartialHz(f0Hz, inharmonicityB, index + 1, secondTermC));
  return all.filter((frequencyHz) => frequencyHz <= partialsBelowHz).map((frequencyHz) => frequencyHz * 2 ** ((jitterCents * dice.normal()) / 1200));
}

function linesOf(spec: SyntheticSpec, partialsHz: readonly number[], dice: Dice): readonly SyntheticLine[] {
  const { slopeDbPerOctave = 6, strikePoint = 1 / 8.3, t60S = 12 * (spec.f0Hz / 110) ** -0.6, late, unisonCents = [0] } = spec;
  return partialsHz.flatMap((centreHz, index) => unisonCents.flatMap((cents): readonly SyntheticLine[] => {
    const n = index + 1;
    const frequencyHz = centreHz * 2 ** (cents / 1200);
    const notch = strikePoint === 0 ? 1 : Math.abs(Math.sin(n * Math.PI * strikePoint));
    const amplitude = gain(-slopeDbPerOctave * Math.log2(n)) * notch * gain(dice.between(-2, 2));
    const dampingPerS = (LN_1000 / t60S) * n ** 0.6;
    const early = { n, frequencyHz, amplitude, phase: dice.between(0, 2 * Math.PI), dampingPerS };
    if (late === undefined) return [early];
    return [early, { ...early, amplitude: amplitude * gain(late.levelDb), dampingPerS: dampingPerS / late.slower, phase: early.phase }];
  }));
}

/** The sum of the lines from the onset on. */
function rungOf(lines: readonly SyntheticLine[], { count, onset, sampleRateHz }: { readonly count: number; readonly onset: number; readonly sampleRateHz: number }): Float64Array {
  const out = new Float64Array(count);
  for (const { frequencyHz, amplitude, phase, dampingPerS } of lines) {
    const step = (2 * Math.PI * frequencyHz) / sampleRateHz;
    const shrink = Math.exp(-dampingPerS / sampleRateHz);
    const [turnRe, turnIm] = [shrink * Math.cos(step), shrink * Math.sin(step)];
    let [re, im] = [amplitude * Math.cos(phase), amplitude * Math.sin(phase)];
    for (let at = onset; at < count; at++) {
      out[at] = (out[at] ?? 0) + re;
      [re, im] = [re * turnRe - im * turnIm, re * turnIm + im * turnRe];
    }
  }
  return out;
}

const peakOf = (list: Float64Array): number => list.reduce((most, x) => Math.max(most, Math.abs(x)), 0);

function noiseOf({ snrDb }: SyntheticSpec, tones: readonly Float64Array[], onset: number, sampleRateHz: number): number {
  if (snrDb === undefined) return 0;
  const powers = tones.map((tone) => {
    const part = tone.subarray(onset, onset + Math.round(2 * sampleRateHz));
    return part.reduce((sum, x) => sum + x * x, 0) / part.length;
  });
  return Math.sqrt(powers.reduce((sum, power) => sum + power, 0) / powers.length) * gain(-snrDb);
}

interface Place {
  readonly dice: Dice;
  readonly onset: number;
  readonly sampleRateHz: number;
  readonly peak: number;
}

/** Noise through one pole at 300 Hz, dying with 15 ms. */
function knock(out: Float64Array, { knockDb }: SyntheticSpec, { dice, onset, sampleRateHz, peak }: Place): void {
  if (knockDb === undefined) return;
  const pole = Math.exp((-2 * Math.PI * 300) / sampleRateHz);
  const thump = new Float64Array(Math.min(out.length - onset, Math.round(0.2 * sampleRateHz)));
  let held = 0;
  for (let at = 0; at < thump.length; at++) {
    held = pole * held + (1 - pole) * dice.normal();
    thump[at] = held * Math.exp(-at / (0.015 * sampleRateHz));
  }
  const scale = (peak * gain(knockDb)) / peakOf(thump);
  for (let at = 0; at < thump.length; at++) out[onset + at] = (out[onset + at] ?? 0) + scale * (thump[at] ?? 0);
}

function hum(out: Float64Array, { hum: given }: SyntheticSpec, { dice, sampleRateHz, peak }: Omit<Place, 'onset'>): void {
  if (given === undefined) return;
  for (let harmonic = 1; harmonic <= given.harmonics; harmonic++) {
    const step = (2 * Math.PI * given.frequencyHz * harmonic) / sampleRateHz;
    const phase = dice.between(0, 2 * Math.PI);
    const amplitude = (peak * gain(given.levelDb)) / harmonic;
    for (let at = 0; at < out.length; at++) out[at] = (out[at] ?? 0) + amplitude * Math.cos(step * at + phase);
  }
}
