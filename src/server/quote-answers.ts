import { estimateTable, quoteDocument, quoteTable } from '#estimate';
import { renderPdf, typeOfFormat, writeTable } from '#files';
import { checkInput } from '#operation';
import type { BenchStore } from '#store';
import { createSay } from '#text';
import { stayOf } from '#workshop';
import type { Context, Hono } from 'hono';
import { Refusal, accepted } from './failure.ts';
import { fileAnswer, idOf } from './file-answer.ts';
import { fileRoutes } from './file-routes.ts';
import { localeOf } from './locale.ts';
import type { Bench } from './mount.ts';

/** Mounts quotes as PDF and as CSV, and the estimate as CSV. */
export function mountQuotes(app: Hono, { store, clock }: Bench): void {
  app.get(fileRoutes.quotePdf.path, async (context) => {
    const { paper } = accepted(checkInput(fileRoutes.quotePdf.query, context.req.query()));
    const { instrument, quote, head } = await quoteOf(await store(), context);
    const locale = localeOf(context);
    const material = { instrument, quote, head, locale, say: createSay(locale), printedAt: clock().toISOString() };
    return fileAnswer(await renderPdf(quoteDocument(material), { paper }), 'application/pdf', `${material.say('quote.title', { name: instrument.name })}.pdf`, 'inline');
  });
  app.get(fileRoutes.quoteCsv.path, async (context) => {
    const { locale } = accepted(checkInput(fileRoutes.quoteCsv.query, context.req.query()));
    const { instrument, quote } = await quoteOf(await store(), context);
    return fileAnswer(await writeTable(quoteTable({ say: createSay(localeOf(context)), quote }), 'csv', locale === undefined ? {} : { locale }), typeOfFormat('csv'), `${instrument.name} quote.csv`);
  });
  app.get(fileRoutes.estimateCsv.path, async (context) => {
    const { locale, cycle } = accepted(checkInput(fileRoutes.estimateCsv.query, context.req.query()));
    const piano = await (await store()).getPiano(idOf(context));
    const { estimate } = stayOf(piano, cycle === undefined ? piano.instrument.cycle : Number(cycle));
    const say = createSay(localeOf(context));
    if (estimate === null) throw new Refusal('notFound', [], say('worth.none'));
    return fileAnswer(await writeTable(accepted(estimateTable(estimate, say)), 'csv', locale === undefined ? {} : { locale }), typeOfFormat('csv'), `${piano.instrument.name} estimate.csv`);
  });
}

async function quoteOf(store: BenchStore, context: Context) {
  const { instrument, quotes, head } = await store.getPiano(idOf(context));
  const quote = quotes.find(({ id }) => id === context.req.param('qid'));
  if (quote === undefined) throw new Refusal('notFound', [], 'There is no such quote');
  return { instrument, quote, head };
}
