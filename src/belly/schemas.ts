import { field } from '#operation';
import { z } from 'zod';
import { bearingSides } from './bearing.ts';

/** No string of a piano is shorter, longer or tauter, and none stands higher over its datum. */
const LENGTH_MM = { min: 1, max: 10_000 };
const HEIGHT_MM = { min: -10_000, max: 10_000 };
const UNCERTAINTY_MM = { min: 0, max: 1000 };
const STIFFNESS = { min: 1e-3, max: 1e9 };

/** Most notes, stations and readings of one calculation. */
export const MOST_NOTES = 250;

const height = (describe: string) => field.millimetres({ ...HEIGHT_MM, describe });
const uncertainty = (describe: string) => field.millimetres({ ...UNCERTAINTY_MM, describe }).optional();

/** A note where it crosses its bridge. */
export const noteShape = {
  tensionN: field.newtons({ min: 0.01, max: 100_000, describe: 'Tension of one string' }),
  strings: field.count({ min: 1, max: 12, describe: 'Strings of the note' }),
  speakingLengthMm: field.millimetres({ ...LENGTH_MM, describe: 'From front rest to bridge, along the datum of the heights' }),
  backLengthMm: field.millimetres({ ...LENGTH_MM, describe: 'From bridge to rear rest, along the datum of the heights' }),
  frontHeightMm: height('String at its front rest over a flat datum, upwards'),
  bridgeHeightMm: height('String on the bridge over the same datum'),
  rearHeightMm: height('String at its rear rest over the same datum'),
} as const;

/** How sure a note’s figures are. */
export const doubtShape = {
  heightUncertaintyMm: uncertainty('Standard uncertainty of each height'),
  speakingLengthUncertaintyMm: uncertainty('Standard uncertainty of the speaking length'),
  backLengthUncertaintyMm: uncertainty('Standard uncertainty of the back length'),
  tensionUncertaintyN: field.newtons({ min: 0, max: 100_000, describe: 'Standard uncertainty of the tension' }).optional(),
} as const;

/** Angles and force of a note, as answered. */
export const bearingShape = {
  frontDeg: field.degrees({ describe: 'Before the bridge; negative where the string lifts' }),
  rearDeg: field.degrees({ describe: 'Behind the bridge; negative where the string lifts' }),
  totalDeg: field.degrees({ describe: 'Front and rear together' }),
  forceN: field.newtons({ describe: 'Of all strings of the note, down positive' }),
  stringStiffnessNPerMm: field.newtonsPerMillimetre({ describe: 'Force gained for each millimetre of bridge height' }),
} as const;

/** Uncertainties of angles and force, as answered. */
export const uncertaintyShape = {
  frontUncertaintyDeg: field.degrees({ describe: 'Standard uncertainty (k = 1)' }).optional(),
  rearUncertaintyDeg: field.degrees({ describe: 'Standard uncertainty (k = 1)' }).optional(),
  totalUncertaintyDeg: field.degrees({ describe: 'Standard uncertainty (k = 1)' }).optional(),
  forceUncertaintyN: field.newtons({ describe: 'Standard uncertainty (k = 1)' }).optional(),
} as const;

/** Sides that lift, as answered. */
export const negativeField = z.array(z.enum(bearingSides)).describe('Where the angle is below 0 and the string lifts');

/** A target angle: beyond 170° no bridge is meant. */
export const targetTotalDeg = field.degrees({ min: -170, max: 170, describe: 'Front and rear angle together, as wanted' });

/** Where a note stands along the stations of a board. */
export const station = field.number({ min: 0, max: MOST_NOTES, describe: 'Where the note stands along the stations 1, 2, 3 …; 2.5 is midway' }).optional();

const stiffness = field.newtonsPerMillimetre({ ...STIFFNESS, describe: 'Force that sinks the bridge by a millimetre' });
const entry = field.newtonsPerMillimetre({ min: -STIFFNESS.max, max: STIFFNESS.max });

/** One spring for the whole board, or a matrix. */
export const stiffnessNPerMm = z.union([stiffness, z.array(z.array(entry).min(1).max(MOST_NOTES)).min(1).max(MOST_NOTES)])
  .describe('Stiffness of the board: a number, the board going down as one; or a symmetric positive definite matrix, a row for each note or station');

/** Stations of a list of influence: the inverse takes the fourth power of their number. */
export const stationCount = field.count({ min: 1, max: 60, describe: 'How many stations the board was pushed at' });

/** A push: the load and how far the board went down. */
export const pushShape = {
  forceN: field.newtons({ min: -100_000, max: 100_000, describe: 'Load, down positive; a mass of 1 kg is 9.80665 N' }),
  deflectionMm: field.millimetres({ min: -1000, max: 1000, describe: 'How far the board went down, by dial gauge' }),
} as const;
