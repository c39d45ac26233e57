import type { HeardNote, PartialPlace } from '../heard-note.ts';
import { partOf } from '../part-of.ts';
import { type BandEnergy, SETTLE_SIGMAS, bandEnergyOf, settleSigmaOf, stretchOf } from './band-energy.ts';
import { type CurveDecay, curveDecayOf } from './curve-decay.ts';
import { decimated } from './decimate.ts';
import { cutOf } from './ending.ts';
import { type PowerCurve, lineThrough } from './energy-decay.ts';
import { densitySpectrumOf, noiseAbout, quietFromS } from './noise.ts';

/** Decay of one partial. */
export interface PartialDecay extends CurveDecay {
  readonly n: number;
}

/** Decay of a note: of the energy of its lowest partials together, and of each of them. */
export interface NoteDecay {
  readonly sum: CurveDecay;
  /** Which partials the sum holds. */
  readonly summed: readonly number[];
  readonly partials: readonly PartialDecay[];
  readonly filterHz: number;
}

/** The sum holds the partials up to this one. */
const HIGHEST_SUMMED = 6;
/** A filter no wider than this share of the distance of partials: the neighbour stands e^(−10) below. */
const SHARE_OF_F0 = 1 / 4.5;
const WIDEST_HZ = 40;
/** Longest stretch that is worked on. */
const LONGEST_S = 30;

/**
 * Decay of the energy of partials 1 to 6, and of each: power in a Gaussian band about each partial (σ = f0/4.5, at most 40 Hz), from
 * 4σt after the onset and led back to it; noise from the bins between partials. Refused figures stand in `refusals` with their reason.
 * Undefined when none of the six partials was found.
 * @source SCHROEDER-1965
 * @source ISO-3382
 * @source WEINREICH-1977
 */
export function noteDecayOf(note: HeardNote): NoteDecay | undefined {
  const partials = note.partials.filter(({ n, frequencyHz }) => n <= HIGHEST_SUMMED && frequencyHz < 0.45 * note.samples.sampleRateHz);
  const filterHz = Math.min(SHARE_OF_F0 * note.f0Hz, WIDEST_HZ);
  const settleS = SETTLE_SIGMAS * settleSigmaOf(filterHz);
  const length = (note.samples.channels[0]?.length ?? 0) / note.samples.sampleRateHz;
  const endS = Math.min(note.endS ?? length, length, note.onsetS + LONGEST_S);
    if (partials.length === 0 || endS - note.onsetS < 5 * settleS) return undefined;
  const curves = curvesOf({ ...note, endS }, partials, filterHz);
  const sum = sumOfCurves(curves);
  const cut = cutOf(sum);
  return {
    sum: curveDecayOf(sum, cut), summed: partials.map(({ n }) => n), filterHz,
    partials: partials.map(({ n }, index) => ({ n, ...curveDecayOf(curves[index] ?? sum, cut) })),
  };
}

function curvesOf(note: HeardNote & { readonly endS: number }, partials: readonly PartialPlace[], sigmaHz: number): readonly PowerCurve[] {
  const { onsetS, endS, f0Hz } = note;
  const settleS = SETTLE_SIGMAS * settleSigmaOf(sigmaHz);
  const startS = Math.max(0, onsetS - settleS);
  const samples = decimated(partOf(note.samples, startS, endS), Math.max(...partials.map(({ frequencyHz }) => frequencyHz)) + f0Hz);
  const stretch = stretchOf(samples, 0, endS - startS, sigmaHz);
  const quiet = densitySpectrumOf(samples, Math.max(onsetS + 2 * settleS, quietFromS(onsetS, endS)) - startS, endS - startS);
  return partials.map(({ frequencyHz }) => {
    const { density, bins } = noiseAbout(quiet, frequencyHz, f0Hz);
    return ledBack({ ...trimmed(bandEnergyOf(stretch, frequencyHz, sigmaHz), onsetS + settleS - startS, settleS), noise: density * sigmaHz * Math.sqrt(Math.PI), noiseDoubt: bins === 0 ? 1 : 1.25 / Math.sqrt(bins) });
  });
}

/** From the beginning of the decay to where the filter begins to feel the end. */
function trimmed({ energy, stepS }: BandEnergy, fromS: number, settleS: number): Pick<PowerCurve, 'power' | 'stepS' | 'settle'> {
  const [from, settle] = [Math.ceil(fromS / stepS), Math.ceil(settleS / stepS)];
  return { power: energy.subarray(from, Math.max(from, energy.length - settle)), stepS, settle };
}

/** The curve led back to the onset: the slope of its first two settlings (noise taken off) goes on through the one that is missing. */
function ledBack(curve: PowerCurve): PowerCurve {
  const { power, settle, noise } = curve;
  const first = Array.from(power.subarray(0, 2 * settle), (value) => Math.log(Math.max(value - noise, noise, Number.MIN_VALUE)));
  if (first.length < 4) return curve;
  const { slope, mean } = lineThrough(first, 0, first.length);
  const middle = (first.length - 1) / 2;
  const led = Float64Array.from({ length: settle }, (_, at) => noise + Math.exp(mean + slope * (at - settle - middle)));
  const out = new Float64Array(settle + power.length);
  out.set(led);
  out.set(power, settle);
  return { ...curve, power: out };
}

function sumOfCurves(curves: readonly PowerCurve[]): PowerCurve {
  const shortest = Math.min(...curves.map(({ power }) => power.length));
  const power = new Float64Array(shortest);
  for (const curve of curves) for (let at = 0; at < shortest; at++) power[at] = (power[at] ?? 0) + (curve.power[at] ?? 0);
  const noise = curves.reduce((sum, curve) => sum + curve.noise, 0);
  const doubt = Math.hypot(...curves.map((curve) => curve.noise * curve.noiseDoubt));
  return { power, stepS: curves[0]?.stepS ?? 1, settle: curves[0]?.settle ?? 0, noise, noiseDoubt: noise === 0 ? 0 : doubt / noise };
}
