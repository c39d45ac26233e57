import { readTable } from '#files';
import type { BenchStore } from '#store';
import { type AirHours, type AirReading, type CareCard, type LoggerPlan, type LoggerReading, airHoursOf, careOf, loggerFileOf, loggerPlanOf, loggerPreviewOf, minuteOf, readLogger } from '#workshop';
import { Refusal, accepted } from './failure.ts';
import type { Call, Handlers } from './handlers.ts';
import { bytesOf } from './import-handlers.ts';

/** The log of the air: preview and keeping read the same file by the same plan, and only the keeping writes. */
export const careHandlers = {
  previewLogger: async ({ body }) => {
    const { plan, table } = await planOf(body);
    return loggerPreviewOf(plan, table);
  },
  addLogger: async ({ store, params, body, by }) => {
    const { plan, bytes } = await planOf(body);
    const file = loggerFileOf(plan, body);
    if (!file.ok) throw new Refusal('refused', file.issues);
    return await store.addLogger(params.id, bytes, file.value, by);
  },
  getClimate: async ({ store, params }) => await airOf(store, (await store.getPiano(params.id)).care),
} satisfies Partial<Handlers>;

/** The log of the air of a piano, hour by hour, from what was read by hand and from every file of a logger. */
export async function airOf(store: BenchStore, care: readonly CareCard[]): Promise<AirHours> {
  const files: (readonly AirReading[])[] = [];
  for (const { hash, reading } of careOf(care, 'logger')) {
    files.push(await readingsOf(store, hash, reading));
  }
  const byHand = careOf(care, 'air').map(({ at, temperatureC, humidityPct }): AirReading => ({ minute: minuteOf(at), temperatureC, humidityPct }));
  return airHoursOf(function* () { for (const readings of [...files, byHand]) yield* readings; }());
}

/** Readings of files seen last, by hash and way of reading: a kept file never changes. Thrown away with the process. */
const seen = new Map<string, readonly AirReading[]>();
const MOST_SEEN = 8;

async function readingsOf(store: BenchStore, hash: string, reading: LoggerReading): Promise<readonly AirReading[]> {
  const key = `${hash} ${JSON.stringify(reading)}`;
  const known = seen.get(key);
  if (known !== undefined) return known;
  const { rows } = accepted(await readTable({ bytes: await store.readLoggerFile(hash) }));
  const { readings } = readLogger(rows, reading);
  const [oldest] = seen.keys();
  if (seen.size >= MOST_SEEN && oldest !== undefined) seen.delete(oldest);
  seen.set(key, readings);
  return readings;
}

async function planOf({ contentBase64, reading }: (Call<'previewLogger'> | Call<'addLogger'>)['body']): Promise<{ readonly plan: LoggerPlan; readonly table: Parameters<typeof loggerPreviewOf>[1]; readonly bytes: Uint8Array }> {
  const bytes = bytesOf(contentBase64);
  const table = accepted(await readTable({ bytes }));
  return { plan: loggerPlanOf(table, stated(reading)), table, bytes };
}

/** What was told, without fields given as undefined. */
function stated<T extends object>(given: T): { readonly [Name in keyof T]: Exclude<T[Name], undefined> } {
  return Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)) as { readonly [Name in keyof T]: Exclude<T[Name], undefined> };
}
