import type { Table } from '../table.ts';
import { columnLetter } from '../table.ts';
import { type LoggerGuess, type LoggerQuestion, asksOf, guessLogger } from './guess-logger.ts';
import type { AirReading } from './hours.ts';
import { type LoggerRows, readLogger } from './read-logger.ts';
import { type CareOf, type LoggerReading, loggerReadingSchema, careDrafts } from './records.ts';
import { type Result, ok, refuse } from '#result';
import { z } from 'zod';

/** What is told of a logger’s file beside its bytes. */
export type LoggerFile = Omit<CareOf<'logger'>, 'id' | 'madeAt' | 'kind' | 'hash'>;

/** A logger’s file on its way in; what of the reading is not told is guessed. */
export const loggerSourceSchema = z.strictObject({
  fileName: careDrafts.logger.shape.fileName,
  contentBase64: z.string(),
  reading: loggerReadingSchema.partial().default({}),
  /** Take the rows that can be read and leave the refused ones out. They stay in the file. */
  leaveOut: z.boolean().default(false),
  remark: careDrafts.logger.shape.remark,
});
export type LoggerSource = z.input<typeof loggerSourceSchema>;

const refusedRow = z.strictObject({ code: z.string(), path: z.string(), given: z.unknown(), allowed: z.string(), params: z.record(z.string(), z.union([z.string(), z.number()])).optional() });

/** What would be read of a file. */
export const loggerPreviewSchema = z.strictObject({
  encoding: z.string(), delimiter: z.string(),
  columns: z.array(z.strictObject({ index: z.number().int(), letter: z.string(), header: z.string(), sample: z.string() })),
  reading: loggerReadingSchema.partial(),
  /** What has to be told before the file can be read. */
  asked: z.array(z.string()),
  readings: z.number().int(),
  from: z.string().nullable(), until: z.string().nullable(),
  refused: z.number().int(),
  /** The first two hundred rows that cannot be read, by cell, given and allowed. */
  refusedRows: z.array(refusedRow),
});
export type LoggerPreview = z.output<typeof loggerPreviewSchema>;

/** A file looked through: how it is read, and what is in it, once enough is told. */
export interface LoggerPlan {
  readonly guess: LoggerGuess;
  readonly asked: readonly LoggerQuestion[];
  readonly rows: LoggerRows;
}

const NOTHING: LoggerRows = { readings: [], refused: [] };
const SHOWN_REFUSED = 200;

/** Looks through the table of a logger by what is told and guessed. */
export function loggerPlanOf({ rows }: Pick<Table, 'rows'>, told: LoggerGuess): LoggerPlan {
  const guess = guessLogger(rows, told);
  const whole = loggerReadingSchema.safeParse(guess);
  const asked = asksOf(guess);
  return { guess, asked, rows: asked.length === 0 && whole.success ? readLogger(rows, whole.data) : NOTHING };
}

/** The plan as it is shown before anything is written. */
export function loggerPreviewOf({ guess, asked, rows: { readings, refused } }: LoggerPlan, { encoding, delimiter, rows }: Table): LoggerPreview {
  const head = rows.slice(0, guess.headRows ?? 1);
  const first = rows[guess.headRows ?? 1] ?? rows[0] ?? [];
  const span = spanOf(readings);
  return {
    encoding, delimiter, reading: guess, asked: [...asked], readings: readings.length, refused: refused.length, refusedRows: refused.slice(0, SHOWN_REFUSED).map(({ code, path, given, allowed, params }) => ({ code, path, given, allowed, ...(params === undefined ? {} : { params: { ...params } }) })),
    columns: first.map((sample, index) => ({ index, letter: columnLetter(index), header: head.at(-1)?.[index] ?? '', sample })),
    from: span?.from ?? null, until: span?.until ?? null,
  };
}

/** What is told of a file that is to be kept; refused while something is asked, nothing is in it, or a row cannot be read and was not let go. */
export function loggerFileOf({ guess, asked, rows: { readings, refused } }: LoggerPlan, { fileName, remark, leaveOut }: { readonly fileName: string; readonly remark: string; readonly leaveOut: boolean }): Result<LoggerFile> {
  const [missing] = asked;
  if (missing !== undefined) return refuse(...asked.map((path) => ({ code: 'required', path: `reading.${path}`, given: null, allowed: 'told, since the file does not say', params: { reason: `logger.${path}` } }) as const));
  if (refused.length > 0 && !leaveOut) return refuse(...refused.slice(0, SHOWN_REFUSED));
  const span = spanOf(readings);
  if (span === undefined) return refuse({ code: 'required', path: 'file', given: fileName, allowed: 'rows with a day and a humidity', params: { reason: 'importRows' } });
  return ok({ fileName, remark, reading: guess as LoggerReading, ...span, readings: readings.length, leftOut: refused.length });
}

function spanOf(readings: readonly AirReading[]): { readonly from: string; readonly until: string } | undefined {
  if (readings.length === 0) return undefined;
  let [first, last] = [Infinity, -Infinity];
  for (const { minute } of readings) {
    first = Math.min(first, minute);
    last = Math.max(last, minute);
  }
  const said = (minute: number): string => new Date(minute * 60_000).toISOString().slice(0, 16);
  return { from: said(first), until: said(last) };
}
