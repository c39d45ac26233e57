import { daySchema } from '#instrument';
import { z } from 'zod';
import { changeOf } from '../change.ts';
import { loanConditionSchema } from '../shop/records.ts';

/** Parts whose wear is watched. */
export const wornParts = ['hammerShape', 'hammers', 'trebleStrings', 'bassStrings', 'centrePins', 'pinblock'] as const;
export type WornPart = (typeof wornParts)[number];

const line = (most: number) => z.string().max(most).regex(/^\P{Cc}*$/u, 'one line').default('');
const words = (most: number) => z.string().max(most).default('');
/** A moment by the clock on the wall, without a zone: what a logger writes and what somebody reads off. */
export const wallTimeSchema = z.string().regex(/^\d{4}-\d{2}-\d{2}T(?:[01]\d|2[0-3]):[0-5]\d$/u, 'a day and a time such as 2026-05-01T10:30');
/** Visits in a year that part it into whole months. */
export const visitCounts = [1, 2, 3, 4, 6, 12] as const;
const visits = z.literal(visitCounts);
const column = z.number().int().min(0).max(499);

/** How the columns of a logger’s file are read; columns are counted from 0. */
export const loggerReadingSchema = z.strictObject({
  /** Rows above the first row of figures. */
  headRows: z.number().int().min(0).max(99),
  /** The column of the moment, or of the day with the time in `timeColumn`. */
  dayColumn: column,
  timeColumn: column.nullable().default(null),
  dayOrder: z.enum(['ymd', 'dmy', 'mdy']),
  humidityColumn: column,
  temperatureColumn: column.nullable().default(null),
  temperatureUnit: z.enum(['C', 'F']).default('C'),
  decimalSign: z.enum(['.', ',']).default('.'),
});
export type LoggerReading = z.output<typeof loggerReadingSchema>;

/** A life as stated for one part, and since when it counts. */
export const partLifeSchema = z.strictObject({
  part: z.enum(wornParts), by: z.enum(['hours', 'years']),
  from: z.number().min(0.5).max(100_000), to: z.number().min(0.5).max(100_000),
  /** When the part was new or was last seen to; null: strings since they were put on, other parts not known. */
  since: daySchema.nullable().default(null),
});
export type PartLife = z.output<typeof partLifeSchema>;

/** Drafts by kind. */
export const careDrafts = {
  /** Air read by hand, and what of the piano was read with it. */
  air: z.strictObject({
    kind: z.literal('air'), at: wallTimeSchema,
    temperatureC: z.number().min(-40).max(60).nullable().default(null), humidityPct: z.number().min(0).max(100),
    /** Mean pitch off the pitch wanted. */
    pitchCt: z.number().min(-200).max(200).nullable().default(null),
    bearingDeg: z.number().min(-10).max(10).nullable().default(null),
    /** Of the wood, by a meter. */
    moisturePct: z.number().min(0).max(40).nullable().default(null),
    remark: words(2000),
  }),
  /** The file of a logger, kept whole by its hash; what is read in it is worked out anew. */
  logger: z.strictObject({
    kind: z.literal('logger'), hash: z.string().regex(/^[0-9a-f]{64}$/u), fileName: line(255), reading: loggerReadingSchema,
    from: wallTimeSchema, until: wallTimeSchema, readings: z.number().int().min(1), leftOut: z.number().int().min(0), remark: words(2000),
  }),
  /** What is asked of the care of the piano. One stands at a time. */
  plan: z.strictObject({
    kind: z.literal('plan'), strungOn: daySchema.nullable().default(null), lastTunedOn: daySchema.nullable().default(null),
    visitsFirstYear: visits, visitsLater: visits,
    hoursPerWeek: z.number().min(0).max(168), intensity: z.number().min(0.1).max(5),
    lowPct: z.number().min(0).max(100), highPct: z.number().min(0).max(100), dayChangePct: z.number().gt(0).max(100),
    boardMm: z.number().gt(0).max(3000).nullable().default(null), blockMm: z.number().gt(0).max(500).nullable().default(null),
    lives: z.array(partLifeSchema).max(wornParts.length), remark: words(4000),
  }),
  /** A piano carried from one place to another. Where is said roughly; addresses stand with people and visits. */
  move: z.strictObject({
    kind: z.literal('move'), on: daySchema, status: z.enum(['planned', 'done', 'cancelled']).default('planned'),
    fromPlace: line(200), toPlace: line(200), mover: z.string().max(60).nullable().default(null),
    weightKg: z.number().gt(0).max(2000).nullable().default(null), legs: z.number().int().min(1).max(8).default(3), heaviestPct: z.number().gt(0).max(100).default(40),
    areaM2: z.number().min(0.1).max(100).nullable().default(null), peopleKg: z.number().min(0).max(2000).default(90), footMm: z.number().min(1).max(1000).nullable().default(null),
    storey: z.enum(['ground', 'cellar', 'upper']).nullable().default(null), steps: z.number().int().min(0).max(2000).nullable().default(null), narrowestMm: z.number().gt(0).max(20_000).nullable().default(null),
    wrap: words(2000),
    arrival: z.strictObject({
      temperatureC: z.number().min(-40).max(60), humidityPct: z.number().min(0.1).max(100), surfaceC: z.number().min(-40).max(60),
      laterC: z.number().min(-40).max(60).nullable().default(null), betweenHours: z.number().min(0.1).max(200).nullable().default(null),
    }).nullable().default(null),
    before: loanConditionSchema.nullable().default(null), after: loanConditionSchema.nullable().default(null),
    remark: words(4000),
  }),
} as const;
export type CareKind = keyof typeof careDrafts;

/** What may be written down by hand; a logger’s file comes in by a door of its own. */
export const careDraftSchema = z.discriminatedUnion('kind', [careDrafts.air, careDrafts.plan, careDrafts.move]);
export type CareDraft = z.input<typeof careDraftSchema>;

const changedAir = z.strictObject({ ...changeOf(careDrafts.air.shape).shape, kind: z.literal('air') });
const changedPlan = z.strictObject({ ...changeOf(careDrafts.plan.shape).shape, kind: z.literal('plan') });
const changedMove = z.strictObject({ ...changeOf(careDrafts.move.shape).shape, kind: z.literal('move') });
/** A change of a card: its kind, and the fields that are to be another. */
export const careChangeSchema = z.discriminatedUnion('kind', [changedAir, changedPlan, changedMove]);
export type CareChange = z.input<typeof careChangeSchema>;

const standing = { id: z.string(), madeAt: z.string() };
/** A card as it is kept. */
export const careCardSchema = z.discriminatedUnion('kind', [
  z.strictObject({ ...careDrafts.air.shape, ...standing }), z.strictObject({ ...careDrafts.logger.shape, ...standing }),
  z.strictObject({ ...careDrafts.plan.shape, ...standing }), z.strictObject({ ...careDrafts.move.shape, ...standing }),
]);
export type CareCard = z.output<typeof careCardSchema>;
export type CareOf<K extends CareKind> = Extract<CareCard, { readonly kind: K }>;

/** The cards of one kind. */
export function careOf<K extends CareKind>(cards: readonly CareCard[], kind: K): readonly CareOf<K>[] {
  return cards.filter((card): card is CareOf<K> => card.kind === kind);
}
