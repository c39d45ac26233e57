import { stockBookDocument, stockTable, stockTotalsTable } from '#estimate';
import { renderPdf, typeOfFormat, writeTable } from '#files';
import { checkInput } from '#operation';
import { createSay } from '#text';
import type { Hono } from 'hono';
import { accepted } from './failure.ts';
import { fileAnswer } from './file-answer.ts';
import { fileRoutes } from './file-routes.ts';
import { localeOf } from './locale.ts';
import type { Bench } from './mount.ts';
import { stockAndHead, stockBookIn, stockRequestOf } from './stock-book.ts';

/** Mounts the stock book as PDF and as CSV. */
export function mountStockBook(app: Hono, { store, clock }: Bench): void {
  app.get(fileRoutes.stockBookPdf.path, async (context) => {
    const { paper, locale: _locale, ...asked } = accepted(checkInput(fileRoutes.stockBookPdf.query, context.req.query()));
    const locale = localeOf(context);
    const say = createSay(locale);
    const { stock, head } = await stockAndHead(await store(), stockRequestOf(asked));
    return fileAnswer(await renderPdf(stockBookDocument({ stock, head, say, locale, printedAt: clock().toISOString() }), { paper }), 'application/pdf', `${say('stockBook.short')}.pdf`, 'inline');
  });
  app.get(fileRoutes.stockBookCsv.path, async (context) => {
    const { table, locale, ...asked } = accepted(checkInput(fileRoutes.stockBookCsv.query, context.req.query()));
    const say = createSay(localeOf(context));
    const stock = await stockBookIn(await store(), stockRequestOf(asked));
    return fileAnswer(await writeTable(table === 'totals' ? stockTotalsTable(stock) : stockTable(stock, say), 'csv', locale === undefined ? {} : { locale }), typeOfFormat('csv'), `${say('stockBook.short')} ${table}.csv`);
  });
}
