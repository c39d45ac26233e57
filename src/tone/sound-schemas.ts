import { field } from '#operation';
import { z } from 'zod';
import { refusalShape } from './compass/schemas.ts';
import { endings } from './decay/ending.ts';

const positive = (describe: string) => field.number({ describe }).optional();

/** Decay of a note, as answered. */
export const decayShape = z.strictObject({
  rangeDb: field.number({ describe: 'Decay that stands above noise and end of the recording' }),
  observedS: field.number({ describe: 'How long it is followed' }),
  ending: z.enum(endings).describe('What ends it: nothing but noise and the end of the file, a damper, or a fade put on'),
  edt10S: positive('Time for 60 dB at the slope of the first 10 dB of the energy decay of partials 1 to 6'),
  edt10UncertaintyS: positive('Standard uncertainty (k = 1) within this recording'),
  t20S: positive('Time for 60 dB at the slope from −5 to −25 dB; needs 35 dB of range'),
  t20UncertaintyS: positive('Standard uncertainty (k = 1) within this recording'),
  stages: field.count({ min: 1, max: 2, describe: 'Slopes the decay bears by BIC' }).optional(),
  earlyS: positive('Time for 60 dB of the first stage'),
  lateS: positive('Time for 60 dB of the second stage; needs 10 dB of it'),
  lateUncertaintyS: positive('Standard error'),
  beatHz: positive('Rate of the strongest beat'),
  beatDepthDb: positive('From trough to crest'),
});

/** Descriptors of warm and bright, as answered. */
export const descriptorsShape = z.strictObject({
  windowFromS: field.number({ describe: 'Begin of the window' }),
  windowS: field.number({ describe: 'Length of the window' }),
  partials: z.array(field.count()).describe('Partials whose amplitudes were found'),
  harmonicCentroid: positive('Mean number of a partial by amplitude, up to C6'),
  harmonicCentroidUncertainty: positive('Standard uncertainty from the noise'),
  centroidHz: positive('Centroid of the amplitude spectrum, 20 Hz to 16 kHz'),
  centroidUncertaintyHz: positive('What taking the noise off would change'),
  balanceDb: positive('Energy of 2 to 16 kHz over that of 30 Hz to 2 kHz'),
  balanceUncertaintyDb: positive('Standard uncertainty from the noise'),
  tristimulus1: positive('Share of the amplitude in partial 1'),
  tristimulus2: positive('Share in partials 2 to 4'),
  tristimulus3: positive('Share from partial 5 on'),
  tristimulus3Uncertainty: positive('Standard uncertainty from the noise'),
  slopeDbPerOctave: positive('Slope of the partials 1 to 24'),
  slopeUncertaintyDbPerOctave: positive('Standard error'),
  slopePartials: field.count({ describe: 'Partials the slope rests on' }).optional(),
  sharpnessAcum: positive('DIN 45692 on ISO 532-1, steady, at the assumed level'),
  sharpnessUncertaintyAcum: positive('What taking the noise off would change'),
  sharpnessLevelDb: field.number({ describe: 'Level the sound is set to for its sharpness, since no recording says how loud it was' }),
  attackNoiseDb: positive('Energy between the partials in the first 60 ms, of the whole; from 200 Hz up'),
  attackNoiseUncertaintyDb: positive('Standard uncertainty'),
  betweenPartialsDb: positive('Energy between the partials in the window, of the whole'),
  betweenPartialsUncertaintyDb: positive('Standard uncertainty'),
});

/** Figures not given, as answered. */
export const refusalsShape = z.array(refusalShape).describe('Figures not given, and why');
