import type { Samples } from '#numerics';
import type { CurveDecay } from './decay/curve-decay.ts';
import { noteDecayOf } from './decay/note-decay.ts';
import { toneDescriptorsOf } from './descriptors/tone-descriptors.ts';
import type { HeardNote, Refusal } from './heard-note.ts';
import { LOUDNESS_S, levelDbOf } from './level.ts';

/** Decay of a note or of one partial, in plain fields. Times are for 60 dB; what is absent stands in the refusals. */
export interface DecayFields {
  readonly rangeDb: number;
  readonly observedS: number;
  readonly ending: CurveDecay['ending'];
  readonly edt10S?: number;
  readonly edt10UncertaintyS?: number;
  readonly t20S?: number;
  readonly t20UncertaintyS?: number;
  readonly stages?: 1 | 2;
  readonly earlyS?: number;
  readonly lateS?: number;
  readonly lateUncertaintyS?: number;
  readonly beatHz?: number;
  readonly beatDepthDb?: number;
}

/** Warm and bright in plain fields, each figure with its standard uncertainty. */
export interface DescriptorFields {
  readonly windowFromS: number;
  readonly windowS: number;
  readonly partials: readonly number[];
  readonly harmonicCentroid?: number;
  readonly harmonicCentroidUncertainty?: number;
  readonly centroidHz?: number;
  readonly centroidUncertaintyHz?: number;
  readonly balanceDb?: number;
  readonly balanceUncertaintyDb?: number;
  readonly tristimulus1?: number;
  readonly tristimulus2?: number;
  readonly tristimulus3?: number;
  readonly tristimulus3Uncertainty?: number;
  readonly slopeDbPerOctave?: number;
  readonly slopeUncertaintyDbPerOctave?: number;
  readonly slopePartials?: number;
  readonly sharpnessAcum?: number;
  readonly sharpnessUncertaintyAcum?: number;
  readonly sharpnessLevelDb: number;
  readonly attackNoiseDb?: number;
  readonly attackNoiseUncertaintyDb?: number;
  readonly betweenPartialsDb?: number;
  readonly betweenPartialsUncertaintyDb?: number;
}

/** What a note sounds like: its decay, its partials’ decays by number, its descriptors, and what is refused and why. */
export interface SoundOfNote {
  readonly decay?: DecayFields;
  readonly summedPartials: readonly number[];
  readonly partialDecays: ReadonlyMap<number, { readonly decayS?: number; readonly decayLateS?: number }>;
  readonly descriptors?: DescriptorFields;
  /** Mean power of the first half second, decibels under full scale: of one microphone at one gain it compares key with key. */
  readonly loudnessDb: number;
  readonly refusals: readonly Refusal[];
}

/** Decay and descriptors of a note that was found: give it the samples and what listening told, onset, end, f0 and partials. */
export function soundOfNote(samples: Samples, { onsetS, endS, f0Hz, partials }: Omit<HeardNote, 'samples'>): SoundOfNote {
  const note: HeardNote = { samples, onsetS, f0Hz, partials: partials.map(({ n, frequencyHz }) => ({ n, frequencyHz })), ...(endS === undefined ? {} : { endS }) };
  const decay = noteDecayOf(note);
  const tone = toneDescriptorsOf(note);
  return {
    ...(decay === undefined ? {} : { decay: decayFields(decay.sum) }), summedPartials: decay?.summed ?? [],
    partialDecays: new Map(decay?.partials.map(({ n, edt10, late }) => [n, { ...(edt10 === undefined ? {} : { decayS: edt10.seconds }), ...(late === undefined ? {} : { decayLateS: late.seconds }) }])),
    ...(tone === undefined ? {} : { descriptors: descriptorFields(tone) }),
    loudnessDb: levelDbOf(samples, onsetS, onsetS + LOUDNESS_S),
    refusals: [
      ...(decay === undefined ? [{ figure: 'decay', reason: 'no-partials' as const }] : decay.sum.refusals),
      ...(tone === undefined ? [{ figure: 'descriptors', reason: 'short-sound' as const }] : tone.refusals),
    ],
  };
}

function decayFields({ rangeDb, observedS, ending, edt10, t20, stages, late, beats }: CurveDecay): DecayFields {
  return {
    rangeDb, observedS, ending,
    ...(edt10 === undefined ? {} : { edt10S: edt10.seconds, edt10UncertaintyS: edt10.uncertaintyS }),
    ...(t20 === undefined ? {} : { t20S: t20.seconds, t20UncertaintyS: t20.uncertaintyS }),
    ...(stages === undefined ? {} : { stages: stages.count, earlyS: stages.earlyS }),
    ...(late === undefined ? {} : { lateS: late.seconds, lateUncertaintyS: late.uncertaintyS }),
    ...(beats === undefined ? {} : { beatHz: beats.rateHz, beatDepthDb: beats.depthDb }),
  };
}

function descriptorFields(tone: NonNullable<ReturnType<typeof toneDescriptorsOf>>): DescriptorFields {
  const { harmonicCentroid, centroidHz, balanceDb, tristimulus, slopeDbPerOctave, sharpnessAcum, attackNoiseDb, betweenPartialsDb } = tone;
  return {
    windowFromS: tone.fromS, windowS: tone.seconds, partials: tone.partials, sharpnessLevelDb: tone.sharpnessLevelDb,
    ...(harmonicCentroid === undefined ? {} : { harmonicCentroid: harmonicCentroid.value, harmonicCentroidUncertainty: harmonicCentroid.uncertainty }),
    ...(centroidHz === undefined ? {} : { centroidHz: centroidHz.value, centroidUncertaintyHz: centroidHz.uncertainty }),
    ...(balanceDb === undefined ? {} : { balanceDb: balanceDb.value, balanceUncertaintyDb: balanceDb.uncertainty }),
    ...(tristimulus === undefined ? {} : { tristimulus1: tristimulus.first.value, tristimulus2: tristimulus.middle.value, tristimulus3: tristimulus.high.value, tristimulus3Uncertainty: tristimulus.high.uncertainty }),
    ...(slopeDbPerOctave === undefined ? {} : { slopeDbPerOctave: slopeDbPerOctave.value, slopeUncertaintyDbPerOctave: slopeDbPerOctave.uncertainty, slopePartials: slopeDbPerOctave.partials }),
    ...(sharpnessAcum === undefined ? {} : { sharpnessAcum: sharpnessAcum.value, sharpnessUncertaintyAcum: sharpnessAcum.uncertainty }),
    ...(attackNoiseDb === undefined ? {} : { attackNoiseDb: attackNoiseDb.value, attackNoiseUncertaintyDb: attackNoiseDb.uncertainty }),
    ...(betweenPartialsDb === undefined ? {} : { betweenPartialsDb: betweenPartialsDb.value, betweenPartialsUncertaintyDb: betweenPartialsDb.uncertainty }),
  };
}
