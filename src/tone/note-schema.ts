import { field } from '#operation';
import { z } from 'zod';
import { refusalShape } from './compass/schemas.ts';
import { type NothingReason, type ToneWarning, nothingReasons, toneWarnings } from './listen.ts';

const optional = (describe: string) => field.number({ describe }).optional();
const seconds = (describe: string) => field.number({ describe });

const quality = z.strictObject({
  snrDb: optional('Mean power of the first 2 s over that of the noise between partials, whole band'),
  clipped: z.boolean().describe('Tops of the wave are cut off'),
  warnings: z.array(z.enum(toneWarnings as unknown as [ToneWarning, ...ToneWarning[]])),
});

const line = z.strictObject({ offsetCents: field.cents({ describe: 'From the frequency of the partial' }), levelDb: field.number({ describe: 'Below full scale' }), dampingPerS: field.number({ describe: 'α of e^(−αt)' }) });

const partial = z.strictObject({
  n: field.count({ min: 1 }),
  frequencyHz: field.hertz(),
  frequencyUncertaintyHz: field.hertz({ describe: 'Standard uncertainty from the noise alone' }),
  levelDb: field.number({ describe: 'Amplitude at the begin of the window, below full scale' }),
  residualCents: field.cents({ describe: 'Beside the law' }).optional(),
  weight: optional('How much it counted in the law, 0 to 1'),
  lines: z.array(line).describe('Single strings, where more than one is told apart'),
  decayS: optional('Early decay time, for 60 dB'),
  decayLateS: optional('Late decay time, for 60 dB'),
});

const decay = z.strictObject({
  rangeDb: field.number({ describe: 'Decay seen above the noise' }), observedS: seconds('Length of it'), ending: z.string().describe('What ended it'),
  edt10S: optional('Early decay time, for 60 dB'), edt10UncertaintyS: optional('Standard uncertainty'),
  t20S: optional('Decay time from −5 to −25 dB, for 60 dB'), t20UncertaintyS: optional('Standard uncertainty'),
  stages: field.count({ min: 1, max: 2 }).optional(), earlyS: optional('First stage, for 60 dB'), lateS: optional('Second stage, for 60 dB'), lateUncertaintyS: optional('Standard uncertainty'),
  beatHz: optional('Rate of the beats'), beatDepthDb: optional('From trough to crest'),
});

const descriptors = z.strictObject({
  windowFromS: seconds('Begin of their window'), windowS: seconds('Length of it'), partials: z.array(field.count()),
  harmonicCentroid: optional('Mean number of the partials by amplitude'), harmonicCentroidUncertainty: optional('Standard uncertainty'),
  centroidHz: optional('Mean frequency by amplitude, 20 Hz to 16 kHz'), centroidUncertaintyHz: optional('Standard uncertainty'),
  balanceDb: optional('Energy above 2 kHz over that below'), balanceUncertaintyDb: optional('Standard uncertainty'),
  tristimulus1: optional('Share of partial 1'), tristimulus2: optional('Share of partials 2 to 4'), tristimulus3: optional('Share of partials from 5 on'), tristimulus3Uncertainty: optional('Standard uncertainty'),
  slopeDbPerOctave: optional('Of the levels of the partials'), slopeUncertaintyDbPerOctave: optional('Standard error'), slopePartials: optional('Partials in it'),
  sharpnessAcum: optional('After DIN 45692, the level set to the one named'), sharpnessUncertaintyAcum: optional('Standard uncertainty'), sharpnessLevelDb: field.number({ describe: 'Level assumed for the sharpness' }),
  attackNoiseDb: optional('Noise of the attack'), attackNoiseUncertaintyDb: optional('Standard uncertainty'),
  betweenPartialsDb: optional('Energy between the partials'), betweenPartialsUncertaintyDb: optional('Standard uncertainty'),
});

const nothing = z.strictObject({ heard: z.literal(false), reason: z.enum(nothingReasons as unknown as [NothingReason, ...NothingReason[]]), quality, methodVersion: field.count() });

/** A note as answered, with its sound. */
export const soundingNoteSchema = z.strictObject({
  heard: z.literal(true),
  key: field.count({ min: 1, describe: 'The key whose equal-tempered pitch is nearest, whatever was told' }),
  f0Hz: field.hertz({ describe: 'Of the law, not of partial 1' }),
  f0UncertaintyHz: field.hertz({ describe: 'Standard uncertainty from the scatter about the law; ±1.96 of it covers 95 %, of few partials too' }),
  offsetCents: field.cents({ describe: 'f0 from equal temperament of the key' }),
  inharmonicityB: optional('Of the law named, through the partials named'),
  inharmonicityUncertainty: optional('Standard uncertainty from the scatter about the law'),
  secondTermC: optional('Of n⁴, where the law has two terms'),
  fitMethod: z.enum(['one-term', 'two-term', 'expected-stiffness']),
  fittedPartials: z.array(field.count()).describe('Partials that counted'),
  scatterCents: field.cents({ describe: 'Of the partials about the law, beyond noise' }),
  degreesOfFreedom: field.count(),
  firstPartialHz: field.hertz({ describe: 'Where the law has partial 1' }),
  unisonSpreadCents: field.cents({ describe: 'Twice the standard deviation of the lines of the strings, weighted by power' }),
  partials: z.array(partial),
  onsetS: seconds('Begin of the note'), endS: seconds('End by the damper or of the recording'), windowFromS: seconds('Begin of the window of the partials'), windowToS: seconds('End of it'),
  loudnessDb: field.number({ describe: 'Mean power of the first half second, under full scale' }),
  decay: decay.optional(), descriptors: descriptors.optional(), summedPartials: z.array(field.count()).describe('Partials whose energy the decay is of'),
  refusals: z.array(refusalShape).describe('Figures not given, and why'),
  quality, methodVersion: field.count(),
});

/** A note as answered, or nothing heard and why. */
export const toneNoteSchema = z.discriminatedUnion('heard', [soundingNoteSchema, nothing]);
