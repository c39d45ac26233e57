import { surfaceNames, surfaces } from '#materials';
import { field } from '#operation';
import type { CubicMetres, Seconds } from '#units';
import { z } from 'zod';
import { STANDARD_PRESSURE_KPA, type RoomAir } from './air-absorption.ts';
import { type PerBand, perBand } from './bands.ts';
import { type Room, type RoomSurface, reverberationModels } from './reverberation.ts';
import { reverberationTargetOf } from './target.ts';

/** Ranges of rooms a piano may stand in, from a cupboard to a cathedral. */
export const VOLUME_M3 = { min: 1, max: 1_000_000 };
const SIDE_MM = { min: 500, max: 200_000 };
const TIME_S = { min: 0.05, max: 60 };

/** Temperature of a room’s air. */
export const temperatureC = field.celsius({ min: -20, max: 50, describe: 'Temperature of the air' });

/** Air that takes sound in. */
export const airShape = {
  temperatureC,
  humidityPct: field.percent({ min: 0.1, max: 100, describe: 'Relative humidity of the air' }),
  pressureKPa: field.kilopascals({ min: 50, max: 110, describe: 'Pressure of the air, 101.325 at sea level' }).default(STANDARD_PRESSURE_KPA),
} as const;

/** Air of a room where only its taking part was asked for. */
const USUAL_AIR = { temperatureC: 20, humidityPct: 50, pressureKPa: STANDARD_PRESSURE_KPA } as RoomAir;

const share = field.ratio({ min: 0, max: 1.2, describe: 'Share of the sound taken in; tables of measured cloth go a little above 1' });
/** Six bands of absorption. */
export const absorption = z.array(share).length(6).describe('At 125, 250, 500, 1000, 2000 and 4000 Hz');
const named = z.enum(surfaceNames).describe('A surface of the table');
/** A surface of the table, or six figures of one’s own. */
export const material = z.union([named, absorption]);

const areaM2 = field.squareMetres({ min: 0, max: 1_000_000, describe: 'Area; cloth by the wall it covers' });
const surface = z.union([z.strictObject({ areaM2, absorption }), z.strictObject({ areaM2, surface: named })]);

/** A room by volume and surfaces. */
export const roomShape = {
  volumeM3: field.cubicMetres({ ...VOLUME_M3, describe: 'Volume of the room' }),
  surfaces: z.array(surface).min(1).max(500).describe('Walls, floor, ceiling, cloth and people, each with its area'),
  air: z.union([z.boolean(), z.strictObject(airShape)]).describe('What the air takes in: its temperature and humidity; true is 20 °C and 50 %; left out or false, nothing').optional(),
  model: z.enum(reverberationModels).describe('sabine: for lively rooms; eyring: where surfaces take in more than a fifth').default('sabine'),
} as const;
/** The same as one object. */
export const roomSchema = z.strictObject(roomShape);

/** Six answers by band. */
export const sixOf = <T extends z.ZodType>(each: T) => z.array(each).length(6);
/** A list that a schema has counted, as a row of bands. */
export const bandsOf = <T>(six: readonly T[]): PerBand<T> => perBand((band) => six[band] as T);

const withinShare = sixOf(field.ratio({ min: 0.1, max: 1 })).describe('Least share of the time allowed at 125, 250, 500, 1000, 2000 and 4000 Hz');
const beyondShare = sixOf(field.ratio({ min: 1, max: 10 })).describe('Greatest share of the time allowed at 125, 250, 500, 1000, 2000 and 4000 Hz');

/** A target of the user’s own. */
export const ownTargetSchema = z.strictObject({
  name: z.string().trim().min(1).max(120).regex(/^\P{Cc}*$/u, 'one line').describe('What it is called'),
  time: z.union([
    z.strictObject({ slopeS: field.seconds({ min: -5, max: 5, describe: 'Seconds for each tenfold of the volume' }), offsetS: field.seconds({ min: -20, max: 20, describe: 'Seconds at one cubic metre' }) }),
    z.strictObject({ fixedS: field.seconds({ ...TIME_S, describe: 'One time for every volume' }) }),
  ]).describe('T = slope·lg V + offset with V in m³, or one time for every volume'),
  lower: withinShare, upper: beyondShare,
  volumes: z.strictObject({ fromM3: field.cubicMetres({ ...VOLUME_M3, describe: 'Smallest volume it is stated for' }), toM3: field.cubicMetres({ ...VOLUME_M3, describe: 'Volume it is stated up to' }) }).nullable().default(null).describe('Volumes it is stated for; nothing where it says none'),
  source: z.string().max(2000).default('').describe('Where it is laid down'),
});

/** A rectangular room. */
export const shoeboxShape = {
  lengthMm: field.millimetres({ ...SIDE_MM, describe: 'Length of the room' }),
  widthMm: field.millimetres({ ...SIDE_MM, describe: 'Width of the room' }),
  heightMm: field.millimetres({ ...SIDE_MM, describe: 'Height of the room' }),
  temperatureC,
} as const;
/** A reverberation time that may be left out. */
export const reverberationS = field.seconds({ ...TIME_S, describe: 'Reverberation time; left out, that wanted of a music room of the volume' });

/** Figures of a material, own or from the table. */
export const absorptionBy = (given: z.output<typeof material>): PerBand => (typeof given === 'string' ? surfaces[given].absorption : bandsOf(given));

const surfaceOf = (given: z.output<typeof surface>): RoomSurface => ({ areaM2: given.areaM2, absorption: 'surface' in given ? surfaces[given.surface].absorption : bandsOf(given.absorption) });
const airOf = (given: z.output<typeof roomShape.air>): { readonly air?: RoomAir } => (given === undefined || given === false ? {} : { air: given === true ? USUAL_AIR : given });

/** The room that was typed. */
export const roomOf = ({ volumeM3, surfaces: given, air }: z.output<typeof roomSchema>): Room => ({ volumeM3, surfaces: given.map(surfaceOf), ...airOf(air) });

/** The time given, or that wanted of a music room. Never less than what a field may hold. */
export const timeOr = (given: Seconds | undefined, volumeM3: CubicMetres): Seconds => given ?? (Math.max(TIME_S.min, reverberationTargetOf(volumeM3, 'music').seconds) as Seconds);
