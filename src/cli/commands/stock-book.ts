import path from 'node:path';
import { gapsWords, stockBookDocument, stockTable, stockTotalsTable } from '#estimate';
import { createSay } from '#text';
import { type StockBook, stockBooks, stockChoices, taxPeriods } from '#workshop';
import type { CommandModule, InferredOptionTypes } from 'yargs';
import { localeAsked, paperFor, writeWhole } from '../document-file.ts';
import { refused } from '../failure.ts';
import { say } from '../language.ts';
import { note, printJson } from '../output.ts';
import { documentOptions } from '../prove-options.ts';
import { dataOption, withStore } from '../with-store.ts';

const { paper, lang, json } = documentOptions;
const options = {
  out: { type: 'string', demandOption: true, requiresArg: true, describe: say('cli.stockBook.out') },
  year: { type: 'string', requiresArg: true, describe: say('cli.stockBook.year') },
  which: { choices: stockChoices, default: 'all' as const, describe: say('cli.stockBook.which') },
  period: { choices: taxPeriods, default: 'quarter' as const, describe: say('cli.stockBook.period') },
  totals: { type: 'boolean', default: false, describe: say('cli.stockBook.totals') },
  book: { choices: stockBooks, describe: say('cli.stockBook.book') },
  paper, lang, json, ...dataOption,
} as const;

type StockBookArguments = InferredOptionTypes<typeof options>;

/** `stock-book --out book.pdf`; a name ending in .csv writes its lines, `--totals` the totals by tax period. */
export const stockBook: CommandModule<object, StockBookArguments> = {
  command: 'stock-book',
  describe: say('cli.stockBook'),
  builder: (yargs) => yargs.options(options),
  handler: async (given) => {
    const kind = path.extname(given.out).toLowerCase();
    const kinds = given.totals ? ['.csv'] : ['.pdf', '.csv'];
    if (!kinds.includes(kind)) throw refused([{ code: 'choice', path: '--out', given: given.out, allowed: `a name ending in ${kinds.join(' or ')}`, params: { choices: kinds.join(', ') } }]);
    const { stock, bytes } = await written(given, kind);
    await writeWhole(given.out, bytes);
    if (given.json) return printJson({ out: given.out, ...stock });
    note(say('cli.stockBook.written', { path: given.out, count: stock.lines.length }));
    const missing = stock.lines.filter(({ gaps }) => gaps.length > 0);
    for (const line of missing) note(gapsWords(line, say));
  },
};

async function written(given: StockBookArguments, kind: string): Promise<{ readonly stock: StockBook; readonly bytes: Uint8Array }> {
  const locale = localeAsked(given.lang);
  const tongue = { say: createSay(locale), locale };
  const { which, period, book } = given;
  const { stockAndHead } = await import('#server');
  const { stock, head } = await withStore(given, (store) => stockAndHead(store, { which, period, book, year: yearOf(given.year) }));
  const { renderPdf, writeTable } = await import('#files');
  if (kind === '.pdf') return { stock, bytes: await renderPdf(stockBookDocument({ ...tongue, stock, head, printedAt: new Date().toISOString() }), { paper: paperFor(given.paper, locale) }) };
  return { stock, bytes: await writeTable(given.totals ? stockTotalsTable(stock) : stockTable(stock, tongue.say), 'csv', given.lang === undefined ? {} : { locale }) };
}

function yearOf(typed: string | undefined): number | null {
  if (typed === undefined) return null;
  if (/^[1-9]\d{3}$/u.test(typed)) return Number(typed);
  throw refused([{ code: 'format', path: '--year', given: typed, allowed: 'a year such as 2031' }]);
}
