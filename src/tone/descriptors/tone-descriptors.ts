import { quietFromS } from '../decay/noise.ts';
import type { HeardNote, Refusal } from '../heard-note.ts';
import { LOWEST_ATTACK_HZ, attackNoiseOf, betweenPartialsOf } from './attack-noise.ts';
import { HIGHEST_HZ, LEAST_OVER_NOISE_DB, balanceOf, centroidOf, sharpnessFigureOf } from './band-descriptors.ts';
import { type NoiseFloor, noiseFloorOf } from './noise-floor.ts';
import { type Figure, type PartialSlope, type Tristimulus, harmonicCentroidOf, partialSlopeOf, tristimulusOf } from './partial-descriptors.ts';
import { type PartialLevel, partialLevelsOf } from './partial-levels.ts';
import { ASSUMED_LEVEL_DB } from './sharpness.ts';
import { type ToneWindow, toneWindowOf } from './tone-window.ts';

/** Warm and bright in figures. All are ratios: gain does not touch them, the place of the microphone does. */
export interface ToneDescriptors {
  /** The window, in seconds of the sound. */
  readonly fromS: number;
  readonly seconds: number;
  /** Partials of which amplitudes were found, by number: what the figures of partials rest on. */
  readonly partials: readonly number[];
  readonly harmonicCentroid?: Figure;
  readonly centroidHz?: Figure;
  readonly balanceDb?: Figure;
  readonly tristimulus?: Tristimulus;
  readonly slopeDbPerOctave?: PartialSlope;
  readonly sharpnessAcum?: Figure;
  /** The level the sound was set to for its sharpness. */
  readonly sharpnessLevelDb: number;
  readonly attackNoiseDb?: Figure;
  /** Sound between the partials while the note rings. */
  readonly betweenPartialsDb?: Figure;
  readonly refusals: readonly Refusal[];
}

/** The window begins so long after the onset, and is so long, or ten periods. */
const AFTER_ONSET_S = 0.01;
const WINDOW_S = 0.5;
const PERIODS = 10;
/** Above C6 too few partials are left below 10 kHz for the figures that weigh partials: C6 in equal temperament and half a semitone. */
const HIGHEST_PARTIAL_HZ = 440 * 2 ** (15.5 / 12);
const FEWEST = { harmonicCentroid: 3, tristimulus: 3, slopeDbPerOctave: 5 } as const;
/** Sampling rate the bands up to 16 kHz need. */
const LEAST_RATE_HZ = 2 * HIGHEST_HZ;

/**
 * Descriptors of warm and bright from the first half second of a note (from 10 ms after the onset, Hann). Undefined where the sound is
 * shorter than the window.
 * @source PEETERS-2011
 * @source POLLARD-JANSSON-1982
 * @source DIN-45692
 */
export function toneDescriptorsOf(note: HeardNote): ToneDescriptors | undefined {
  const seconds = Math.max(WINDOW_S, PERIODS / note.f0Hz);
  const length = (note.samples.channels[0]?.length ?? 0) / note.samples.sampleRateHz;
  const endS = Math.min(note.endS ?? length, length);
  const window = note.onsetS + AFTER_ONSET_S + seconds > endS ? undefined : toneWindowOf(note.samples, note.onsetS + AFTER_ONSET_S, seconds);
  if (window === undefined) return undefined;
  const floor = noiseFloorOf(note.samples, quietFromS(note.onsetS, endS), endS);
  const levels = partialLevelsOf(window, note.partials, note.f0Hz);
  const betweenPartialsDb = betweenPartialsOf(note, window, floor);
  const between: Part = betweenPartialsDb === undefined ? { figures: {}, refusals: [{ figure: 'betweenPartialsDb', reason: 'in-noise' }] } : { figures: { betweenPartialsDb }, refusals: [] };
  const parts = [between, ofPartials(levels, note.f0Hz), ofBands(window, floor, note.samples.sampleRateHz), ofAttack(note, floor)];
  return {
    fromS: window.fromS, seconds, partials: levels.map(({ n }) => n), sharpnessLevelDb: ASSUMED_LEVEL_DB,
    ...parts.reduce<Partial<ToneDescriptors>>((all, { figures }) => ({ ...all, ...figures }), {}),
    refusals: parts.flatMap(({ refusals }) => refusals),
  };
}

interface Part {
  readonly figures: Partial<ToneDescriptors>;
  readonly refusals: readonly Refusal[];
}

function ofPartials(levels: readonly PartialLevel[], f0Hz: number): Part {
  const names = ['harmonicCentroid', 'tristimulus', 'slopeDbPerOctave'] as const;
  if (f0Hz > HIGHEST_PARTIAL_HZ) return { figures: {}, refusals: names.map((figure) => ({ figure, reason: 'above-range', found: f0Hz, needed: HIGHEST_PARTIAL_HZ })) };
  const bears = (figure: (typeof names)[number]): boolean => levels.length >= FEWEST[figure];
  return {
    figures: {
      ...(bears('harmonicCentroid') ? { harmonicCentroid: harmonicCentroidOf(levels) } : {}),
      ...(bears('tristimulus') ? { tristimulus: tristimulusOf(levels) } : {}),
      ...(bears('slopeDbPerOctave') ? { slopeDbPerOctave: partialSlopeOf(levels) } : {}),
    },
    refusals: names.filter((figure) => !bears(figure)).map((figure) => ({ figure, reason: 'few-partials', found: levels.length, needed: FEWEST[figure] })),
  };
}

function ofBands(window: ToneWindow, floor: NoiseFloor, sampleRateHz: number): Part {
  const names = ['centroidHz', 'balanceDb', 'sharpnessAcum'] as const;
  if (sampleRateHz < LEAST_RATE_HZ) return { figures: {}, refusals: names.map((figure) => ({ figure, reason: 'narrow-band', found: sampleRateHz, needed: LEAST_RATE_HZ })) };
  const balance = balanceOf(window, floor);
  const others = { centroidHz: centroidOf(window, floor, 20, HIGHEST_HZ), sharpnessAcum: sharpnessFigureOf(window, floor) };
  if ('value' in balance) return { figures: { ...others, balanceDb: { value: balance.value, uncertainty: balance.uncertainty } }, refusals: [] };
  return { figures: others, refusals: [{ figure: 'balanceDb', reason: 'in-noise', found: balance.overNoiseDb, needed: LEAST_OVER_NOISE_DB }] };
}

function ofAttack(note: HeardNote, floor: NoiseFloor): Part {
  const attackNoiseDb = attackNoiseOf(note, floor);
  if (attackNoiseDb !== undefined) return { figures: { attackNoiseDb }, refusals: [] };
  if (note.f0Hz < LOWEST_ATTACK_HZ) return { figures: {}, refusals: [{ figure: 'attackNoiseDb', reason: 'below-range', found: note.f0Hz, needed: LOWEST_ATTACK_HZ }] };
  return { figures: {}, refusals: [{ figure: 'attackNoiseDb', reason: 'in-noise' }] };
}
