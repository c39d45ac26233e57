import { daySchema } from '#instrument';
import { surfaceNames } from '#materials';
import { decayDoubts, ownTargetSchema, roomUses, turnsDeg } from '#room';
import { z } from 'zod';

const mm = (min: number, max: number) => z.number().min(min).max(max);
const six = <T extends z.ZodType>(each: T) => z.array(each).length(6);

/** What a surface is made of: a row of the table, or six shares of one’s own, which go before it. */
export const roomFaceSchema = z.strictObject({
  surface: z.enum(surfaceNames).nullable().default(null),
  /** At 125, 250, 500, 1000, 2000 and 4000 Hz. */
  own: six(z.number().min(0).max(1.2)).nullable().default(null),
}).refine(({ surface, own }) => surface !== null || own !== null, { path: ['surface'], message: 'a surface of the table, or six shares of its own' });
export type RoomFace = z.output<typeof roomFaceSchema>;

/** Where something hangs or lies: floor, ceiling, or the wall of this number. */
const onSchema = z.union([z.enum(['floor', 'ceiling']), z.number().int().min(1).max(60)]);
export type RoomSide = z.output<typeof onSchema>;

/** What a recording of claps, a balloon or a sweep told of the room; `null` where it did not bear a time. */
export const roomMeasuredSchema = z.strictObject({
  on: daySchema,
  file: z.string().max(255),
  /** The recording itself, by the hash it is kept under. */
  sound: z.string().regex(/^[0-9a-f]{64}$/u, 'a SHA-256').nullable().default(null),
  /** The rising sweep that was played, where one was. */
  sweep: z.strictObject({ fromHz: z.number(), toHz: z.number(), lengthS: z.number() }).nullable().default(null),
  impulseCount: z.number().int().min(0),
  edtS: six(z.number().nullable()),
  t20S: six(z.number().nullable()),
  t30S: six(z.number().nullable()),
  quality: z.array(z.strictObject({
    bandHz: z.number(), toldCount: z.number().int(), t20SpreadS: z.number().optional(), dynamicDb: z.number(), curvaturePct: z.number().optional(), nonlinearity: z.number().optional(),
    doubts: z.array(z.enum(decayDoubts)),
  })).max(6),
});
export type RoomMeasured = z.output<typeof roomMeasuredSchema>;

/** A target of the shop as a room took it over: it stays as it was then, whatever becomes of the shop’s. */
export const roomStandardSchema = z.strictObject({ ...ownTargetSchema.shape, id: z.string().min(1).max(60) });
export type RoomStandard = z.output<typeof roomStandardSchema>;

/** A room the piano stands in or may stand in; `null` means not stated. Several are choices beside each other. */
export const roomDraftSchema = z.strictObject({
  cycle: z.number().int().min(1),
  name: z.string().trim().min(1).max(120).regex(/^\P{Cc}*$/u, 'one line'),
  plan: z.discriminatedUnion('shape', [
    z.strictObject({ shape: z.literal('box'), lengthMm: mm(500, 200_000), widthMm: mm(500, 200_000) }),
    z.strictObject({ shape: z.literal('points'), points: z.array(z.strictObject({ alongMm: mm(0, 200_000), acrossMm: mm(0, 200_000) })).min(3).max(60) }),
  ]),
  /** The mean, where the ceiling slopes. */
  heightMm: mm(500, 200_000),
  floor: roomFaceSchema,
  ceiling: roomFaceSchema,
  /** One for each wall, from each corner to the next. */
  walls: z.array(roomFaceSchema).min(3).max(60),
  /** What hangs, lies or stands there, by the area it covers. */
  things: z.array(z.strictObject({ words: z.string().max(120).default(''), face: roomFaceSchema, areaM2: z.number().gt(0).max(100_000), on: onSchema })).max(60).default([]),
  people: z.number().int().min(0).max(10_000).default(0),
  temperatureC: mm(-20, 50).nullable().default(null),
  humidityPct: mm(0.1, 100).nullable().default(null),
  /** What the room is to be good for; not stated, nothing is judged. */
  use: z.enum(roomUses).nullable().default(null),
  /** A target of the shop’s own, which goes before the use. */
  standard: roomStandardSchema.nullable().default(null),
  /** Middle of the case, and where its tail points: 0 along, 90 across. */
  piano: z.strictObject({ lengthMm: mm(300, 4000), alongMm: mm(0, 200_000), acrossMm: mm(0, 200_000), tailDeg: z.union(turnsDeg.map((turn) => z.literal(turn))) }).nullable().default(null),
  /** Sound power of the piano over 1 pW, or a level read in this room. */
  loudness: z.union([z.strictObject({ powerDb: mm(0, 160) }), z.strictObject({ levelDb: mm(0, 160), distanceMm: mm(100, 200_000) })]).nullable().default(null),
  playerMm: mm(100, 200_000).nullable().default(null),
  listenerMm: mm(100, 200_000).nullable().default(null),
  hoursADay: z.number().gt(0).max(24).nullable().default(null),
  measured: z.array(roomMeasuredSchema).max(20).default([]),
  remark: z.string().max(4000).default(''),
});
export type RoomDraft = z.input<typeof roomDraftSchema>;
/** A room whose defaults are filled in. */
export type RoomGiven = z.output<typeof roomDraftSchema>;

/** A room as it is kept. */
export const roomRecordSchema = z.strictObject({ ...roomDraftSchema.shape, id: z.string(), at: z.string() });
export type RoomRecord = z.output<typeof roomRecordSchema>;
