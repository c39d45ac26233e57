import { type PlannedFile, planFile } from '#files';
import { compassOf } from '#instrument';
import type { BenchStore } from '#store';
import { batchOf, previewOf } from '#workshop';
import { Refusal, accepted } from './failure.ts';
import type { Call, Handlers } from './handlers.ts';

type ImportCall = Call<'previewImport'> | Call<'runImport'>;

/** Imports: preview and run plan the same file by the same plan, and only the run writes. */
export const importHandlers = {
  previewImport: async ({ store, params, body }) => {
    const { plan, table } = await planOf(store, params.id, body);
    return previewOf(plan, table, body.locale ?? 'en');
  },
  runImport: async ({ store, params, body, by }) => {
    const { plan } = await planOf(store, params.id, body);
    if (plan.issues.length > 0) throw new Refusal('refused', plan.issues);
    const { cycle, state, sessionId, locale } = body;
    const batch = batchOf(plan, { cycle, state, sessionId, ...(locale === undefined ? {} : { locale }) });
    const { seq } = batch === null ? { seq: null } : await store.writeReadings(params.id, batch, by);
    return { seq, counts: { ...plan.counts } };
  },
} satisfies Partial<Handlers>;

async function planOf(store: BenchStore, id: string, body: ImportCall['body']): Promise<PlannedFile> {
  const { contentBase64, sheet, mapping, cycle, state, locale } = body;
  const [{ instrument }, standing] = await Promise.all([store.getPiano(id), store.listReadings(id, cycle)]);
  const file = { bytes: bytesOf(contentBase64), ...(sheet === undefined ? {} : { sheet }) };
  const request = { compass: compassOf(instrument), standing, cycle, state, ...(mapping === undefined ? {} : { mapping }), ...(locale === undefined ? {} : { locale }) };
  return accepted(await planFile(file, request));
}

/** The bytes of a file sent as base64. @throws Refusal where it is none. */
export function bytesOf(contentBase64: string): Uint8Array {
  if (!/^[A-Za-z\d+/]*={0,2}$/u.test(contentBase64) || contentBase64.length % 4 !== 0) {
    throw new Refusal('refused', [{ code: 'format', path: 'contentBase64', given: contentBase64.slice(0, 40), allowed: 'base64 (RFC 4648, section 4)' }]);
  }
  return new Uint8Array(Buffer.from(contentBase64, 'base64'));
}
