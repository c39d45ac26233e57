import { renderPdf, typeOfFormat, writeTable } from '#files';
import { compassOf } from '#instrument';
import { checkInput } from '#operation';
import { buildProof, proofInputOf } from '#proof';
import type { ReportDocument } from '#report';
import type { BenchStore } from '#store';
import { createSay } from '#text';
import { tableOfReadings } from '#workshop';
import type { Hono } from 'hono';
import { accepted } from './failure.ts';
import { fileAnswer, idOf } from './file-answer.ts';
import { fileRoutes } from './file-routes.ts';
import { localeOf } from './locale.ts';
import { proofSourceOf } from './material.ts';
import type { Bench } from './mount.ts';

/** Mounts the routes that hand a piano out as a file. */
export function mountFiles(app: Hono, { store, clock }: Bench): void {
  app.get(fileRoutes.exportPiano.path, async (context) => {
    const { format, state, locale, ...query } = accepted(checkInput(fileRoutes.exportPiano.query, context.req.query()));
    const bench = await store();
    const { instrument } = await bench.getPiano(idOf(context));
    const cycle = query.cycle === undefined ? instrument.cycle : Number(query.cycle);
    const readings = await bench.listReadings(instrument.id, cycle);
    const table = tableOfReadings({ readings, compass: compassOf(instrument), cycle, state, locale: locale ?? 'en' });
    const bytes = await writeTable(table, format, locale === undefined ? {} : { locale });
    return fileAnswer(bytes, typeOfFormat(format), `${instrument.name} ${String(cycle)} ${state}.${format}`);
  });
  app.get(fileRoutes.proofDocument.path, async (context) => {
    const { cycle } = accepted(checkInput(fileRoutes.proofDocument.query, context.req.query()));
    const { document } = await proofOf(await store(), idOf(context), { cycle, locale: localeOf(context), printedAt: clock().toISOString() });
    return context.json(document as object);
  });
  app.get(fileRoutes.proofPdf.path, async (context) => {
    const { paper, cycle } = accepted(checkInput(fileRoutes.proofPdf.query, context.req.query()));
    const { document, name } = await proofOf(await store(), idOf(context), { cycle, locale: localeOf(context), printedAt: clock().toISOString() });
    return fileAnswer(await renderPdf(document, { paper }), 'application/pdf', `${name}.pdf`, 'inline');
  });
}

interface ProofRequest {
  readonly cycle: string | undefined;
  readonly locale: string;
  readonly printedAt: string;
}

/** The proof of one cycle of a kept piano, read, worked out and laid out anew. */
async function proofOf(store: BenchStore, id: string, { locale, printedAt, cycle }: ProofRequest): Promise<{ readonly document: ReportDocument; readonly name: string }> {
  const source = await proofSourceOf(store, id, cycle === undefined ? undefined : Number(cycle));
  return { document: buildProof(proofInputOf({ ...source, printedAt, locale, say: createSay(locale) })), name: source.instrument.name };
}
