import { renderPdf, typeOfFormat, writeTable } from '#files';
import { compassOf } from '#instrument';
import { checkInput } from '#operation';
import { type OrderDocumentInput, type OrderFieldName, type OrderTerms, chartTable, checkOrderTerms, hasStrings, orderDocument, orderFieldNames, stringOrderOf, stringingChart, wireTable, woundSheetTable } from '#order';
import type { BenchStore } from '#store';
import { createSay } from '#text';
import { stayOf } from '#workshop';
import type { Context, Hono } from 'hono';
import { Refusal, accepted } from './failure.ts';
import { fileAnswer, idOf } from './file-answer.ts';
import { fileRoutes } from './file-routes.ts';
import { localeOf } from './locale.ts';
import type { Bench } from './mount.ts';

/** Mounts the string order and the stringing chart, as PDF and as CSV. */
export function mountOrders(app: Hono, { store, clock }: Bench): void {
  const inputOf = async (context: Context, query: OrderQuery): Promise<OrderDocumentInput> => orderInputOf(await store(), idOf(context), query, { locale: localeOf(context), printedAt: clock().toISOString() });
  app.get(fileRoutes.orderPdf.path, async (context) => {
    const { paper, ...query } = accepted(checkInput(fileRoutes.orderPdf.query, context.req.query()));
    const input = await inputOf(context, query);
    return fileAnswer(await renderPdf(orderDocument(input), { paper }), 'application/pdf', `${input.say('order.title', { name: input.instrument.name })}.pdf`, 'inline');
  });
  app.get(fileRoutes.orderCsv.path, async (context) => {
    const { table, ...query } = accepted(checkInput(fileRoutes.orderCsv.query, context.req.query()));
    const { order, instrument } = await inputOf(context, query);
    const printed = table === 'wound' ? woundSheetTable(order, compassOf(instrument)) : wireTable(order);
    return fileAnswer(await writeTable(printed, 'csv', localed(query)), typeOfFormat('csv'), `${instrument.name} ${table}.csv`);
  });
  app.get(fileRoutes.chartPdf.path, async (context) => {
    const { paper, ...query } = accepted(checkInput(fileRoutes.chartPdf.query, context.req.query()));
    const input = await inputOf(context, query);
    return fileAnswer(await renderPdf(stringingChart(input), { paper }), 'application/pdf', `${input.say('chart.title', { name: input.instrument.name })}.pdf`, 'inline');
  });
  app.get(fileRoutes.chartCsv.path, async (context) => {
    const query = accepted(checkInput(fileRoutes.chartCsv.query, context.req.query()));
    const { order, instrument } = await inputOf(context, query);
    return fileAnswer(await writeTable(chartTable(order, compassOf(instrument)), 'csv', localed(query)), typeOfFormat('csv'), `${instrument.name} chart.csv`);
  });
}

type OrderQuery = { readonly state: OrderDocumentInput['order']['state']; readonly cycle?: string | undefined; readonly locale?: string | undefined } & Readonly<Partial<Record<OrderFieldName, string | undefined>>>;

const localed = ({ locale }: OrderQuery): { readonly locale?: string } => (locale === undefined ? {} : { locale });

async function orderInputOf(store: BenchStore, id: string, query: OrderQuery, made: { readonly locale: string; readonly printedAt: string }): Promise<OrderDocumentInput> {
  const orderTerms = accepted(checkOrderTerms(termsOf(query)));
  const piano = await store.getPiano(id);
  const { instrument, head } = piano;
  const cycle = query.cycle === undefined ? instrument.cycle : Number(query.cycle);
  const order = stringOrderOf({ instrument, readings: await store.listReadings(id, cycle), cycle, state: query.state, terms: stayOf(piano, cycle).scale, orderTerms });
  const say = createSay(made.locale);
  if (!hasStrings(order)) throw new Refusal('refused', [], say('cli.order.nothing', { state: say(`proof.state.${query.state}`) }));
  return { instrument, order, cycle, head, say, ...made };
}

function termsOf(query: OrderQuery): OrderTerms {
  return Object.fromEntries(orderFieldNames.flatMap((name) => (query[name] === undefined ? [] : [[name, Number(query[name])]])));
}
