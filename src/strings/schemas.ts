import { castIron, copperWire, steelWire } from '#materials';
import { field } from '#operation';
import { type Result, ok, refuse, under } from '#result';
import { type Millimetres, millimetres } from '#units';
import { z } from 'zod';
import { coreShapes } from './section.ts';
import { CLOSE_PACKING, THINNEST_WRAP_MM, type Winding } from './winding.ts';
import { strengthModels } from './wire-strength.ts';

/** No piano string is shorter, longer, thinner or stouter, and none sounds outside this. */
const LENGTH_MM = { min: 5, max: 10_000 };
const WIRE_MM = { min: 0.1, max: 6.5 };
const PITCH_HZ = { min: 5, max: 20_000 };
const DENSITY = { min: 500, max: 25_000 };

const end = (describe: string) => field.millimetres({ min: 0, max: LENGTH_MM.max, describe }).default(millimetres(0));
const density = (describe: string) => field.kilogramsPerCubicMetre({ ...DENSITY, describe });
const expansion = (describe: string) => field.perKelvin({ min: 0, max: 1e-4, describe });

/** Fields that several operations share; each says the same everywhere. */
export const fields = {
  frequencyHz: field.hertz({ ...PITCH_HZ, describe: 'Frequency of partial 1' }),
  speakingLengthMm: field.millimetres({ ...LENGTH_MM, describe: 'From agraffe or bar to bridge pin' }),
  totalLengthMm: field.millimetres({ ...LENGTH_MM, describe: 'From tuning pin to hitch pin; not below the speaking length' }),
  diameterMm: field.millimetres({ ...WIRE_MM, describe: 'Wire diameter, by micrometer' }),
  youngsModulusGPa: field.gigapascals({ min: 10, max: 500, describe: 'Young’s modulus; 190 to 207 for music wire' }).default(steelWire.youngsModulusGPa.value),
  densityKgM3: density('Density of the wire').default(steelWire.densityKgM3.value),
  strengthModel: z.enum(strengthModels).describe('Where the least strength is taken from').optional(),
  certificateMPa: field.megapascals({ min: 100, max: 10_000, describe: 'Tensile strength by certificate or test break; wins over every table' }).optional(),
  stringExpansionPerK: expansion('Linear expansion of the wire').default(steelWire.expansionPerK.value),
  frameExpansionPerK: expansion('Linear expansion of the plate').default(castIron.expansionPerK.value),
} as const;

const coreShape = {
  coreDiameterMm: field.millimetres({ ...WIRE_MM, describe: 'Core wire; a hexagonal one across its flats' }),
  coreShape: z.enum(coreShapes).default('round'),
  coreDensityKgM3: density('Density of the core').default(steelWire.densityKgM3.value),
} as const;

const measuredShape = {
  overallDiameterMm: field.millimetres({ min: WIRE_MM.min, max: 30, describe: 'Measured over the winding; more than the core' }),
  packing: field.ratio({ min: 0.3, max: 1, describe: 'Share of the ring that is metal: π/4 for round wire laid close, to about 0.9 pulled tight' }).default(CLOSE_PACKING),
  wrapDensityKgM3: density('Density of the wrap, as wire').default(copperWire.densityKgM3.value),
} as const;

const wrapSchema = z.strictObject({
  wireDiameterMm: field.millimetres({ min: THINNEST_WRAP_MM, max: 6.5, describe: 'Wrap wire' }),
  densityKgM3: density('Density of the wrap wire').default(copperWire.densityKgM3.value),
});

const wrapsSchema = z.union([z.array(wrapSchema).min(1).max(2), z.strictObject(measuredShape)]).describe('Wraps from the core outwards, or the measured overall diameter');

/** The two ways to give a winding, with further fields on either. */
export function windingSchemas<Shape extends z.ZodRawShape>(rest: Shape) {
  return [z.strictObject({ ...coreShape, wraps: wrapsSchema, ...rest }), z.strictObject({ ...coreShape, ...measuredShape, ...rest })] as const;
}

/** Bare ends and first-wrap steps. */
export const endShape = {
  bareFrontMm: end('Bare core at the tuning pin’s end'),
  bareRearMm: end('Bare core at the bridge'),
  stepFrontMm: end('Further length with the first wrap only, tuning pin’s end'),
  stepRearMm: end('Further length with the first wrap only, at the bridge'),
} as const;

type Measured = Extract<Winding, { readonly overallDiameterMm: Millimetres }>;
type Wrapped = Extract<Winding, { readonly wraps: unknown }>;
type MeasuredFields = Pick<Measured, 'overallDiameterMm' | 'packing' | 'wrapDensityKgM3'>;
type Flat<Given> = Given extends { readonly wraps: infer Wraps } ? Omit<Given, 'wraps'> & (Wraps extends readonly unknown[] ? Pick<Wrapped, 'wraps'> : MeasuredFields) : Given;

/** A winding whose overall diameter stands under `wraps` or beside them, as one with it beside. */
export function flatWinding<Given extends { readonly wraps: Wrapped['wraps'] | MeasuredFields } | MeasuredFields>(given: Given): Flat<Given> {
  if (!('wraps' in given) || !('overallDiameterMm' in given.wraps)) return given as unknown as Flat<Given>;
  const { wraps, ...rest } = given;
  return { ...rest, ...wraps } as unknown as Flat<Given>;
}

/** The issues of a flattened winding under the paths of what was given: the overall diameter may have stood under `wraps`. */
export function issuesOfGiven<T>(given: { readonly wraps: Wrapped['wraps'] | MeasuredFields } | MeasuredFields, result: Result<T>): Result<T> {
  if (result.ok || !('wraps' in given) || !('overallDiameterMm' in given.wraps)) return result;
  return refuse(...result.issues.flatMap((issue) => (issue.path === 'overallDiameterMm' ? under('wraps', [issue]) : [issue])));
}

/** Refuses a whole length below the speaking part of it. */
export function checkLengths<T extends { readonly speakingLengthMm: Millimetres; readonly totalLengthMm: Millimetres }>(given: T): Result<T> {
  const { speakingLengthMm, totalLengthMm } = given;
  if (totalLengthMm >= speakingLengthMm) return ok(given);
  return refuse({ code: 'order', path: 'totalLengthMm', given: totalLengthMm, allowed: `at least the speaking length, ${String(speakingLengthMm)}`, params: { reason: 'totalBelowSpeaking', min: speakingLengthMm } });
}
