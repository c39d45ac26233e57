import path from 'node:path';
import { type QuoteMaterial, estimateTable, quoteDocument, quoteFiguresOf, quoteTable } from '#estimate';
import { decimalText } from '#money';
import { createSay } from '#text';
import { type Estimate, type Quote, stayOf } from '#workshop';
import type { CommandModule, InferredOptionTypes } from 'yargs';
import { localeAsked, paperFor, writeWhole } from '../document-file.ts';
import { refused } from '../failure.ts';
import { cycleOf } from '../file-options.ts';
import { say } from '../language.ts';
import { note, printJson } from '../output.ts';
import { documentOptions } from '../prove-options.ts';
import { dataOption, findInstrument, instrumentPositional, withStore } from '../with-store.ts';

const { paper, lang, json } = documentOptions;
const options = {
  out: { type: 'string', demandOption: true, requiresArg: true, describe: say('cli.quote.out') },
  quote: { type: 'string', requiresArg: true, describe: say('cli.quote.which') },
  estimate: { type: 'boolean', default: false, describe: say('cli.quote.estimate') },
  cycle: { type: 'string', requiresArg: true, describe: say('cli.cycle') },
  paper, lang, json, ...dataOption,
} as const;

type QuoteArguments = InferredOptionTypes<typeof options> & { readonly instrument: string };

interface Found extends Omit<QuoteMaterial, 'quote'> {
  readonly quote: Quote | undefined;
  readonly estimate: Estimate | null;
}

/** `quote INSTRUMENT --out quote.pdf`; a name ending in .csv writes its table, `--estimate` the table of the estimate. */
export const quote: CommandModule<object, QuoteArguments> = {
  command: 'quote <instrument>',
  describe: say('cli.quote'),
  builder: (yargs) => yargs.positional('instrument', instrumentPositional).options(options),
  handler: async (given) => {
    const kind = path.extname(given.out).toLowerCase();
    const kinds = given.estimate ? ['.csv'] : ['.pdf', '.csv'];
    if (!kinds.includes(kind)) throw refused([{ code: 'choice', path: '--out', given: given.out, allowed: `a name ending in ${kinds.join(' or ')}`, params: { choices: kinds.join(', ') } }]);
    const found = await findQuote(given);
    if (given.estimate) { await writeEstimate(given, found); return; }
    const { quote: one, ...rest } = found;
    if (one === undefined) throw refused([], say('cli.quote.none'));
    const material = { ...rest, quote: one };
    await writeWhole(given.out, await (kind === '.pdf' ? pdfOf(given, material) : csvOf(given, quoteTable(material))));
    const { totalMinor, currency } = quoteFiguresOf(one, null);
    if (given.json) return printJson({ out: given.out, quote: one.id, version: one.version, state: one.state, totalMinor, currency });
    note(say('cli.quote.written', { path: given.out, total: `${decimalText({ minor: totalMinor, currency })} ${currency}` }));
  },
};

async function findQuote(given: QuoteArguments): Promise<Found> {
  const locale = localeAsked(given.lang);
  return withStore(given, async (store) => {
    const { id, cycle: current } = await findInstrument(store, given.instrument);
    const cycle = cycleOf(given.cycle, current);
    const piano = await store.getPiano(id);
    const { quotes, estimate } = stayOf(piano, cycle);
    const wanted = given.quote === undefined ? quotes.at(-1) : quotes.find((one) => one.id.startsWith(given.quote ?? ''));
    if (given.quote !== undefined && wanted === undefined) throw refused([{ code: 'choice', path: '--quote', given: given.quote, allowed: `one of ${quotes.map((one) => one.id.slice(0, 8)).join(', ')}`, params: { choices: quotes.map((one) => one.id.slice(0, 8)).join(', ') } }]);
    return { instrument: piano.instrument, head: piano.head, quote: wanted, estimate, printedAt: new Date().toISOString(), locale, say: createSay(locale) };
  });
}

async function writeEstimate(given: QuoteArguments, { estimate, say: tongue }: Found): Promise<void> {
  if (estimate === null) throw refused([], say('worth.none'));
  const table = estimateTable(estimate, tongue);
  if (!table.ok) throw refused(table.issues);
  await writeWhole(given.out, await csvOf(given, table.value));
  if (given.json) return printJson({ out: given.out });
  note(say('cli.sheet.written', { path: given.out }));
}

async function pdfOf({ paper: named }: QuoteArguments, material: QuoteMaterial): Promise<Uint8Array> {
  const { renderPdf } = await import('#files');
  return renderPdf(quoteDocument(material), { paper: paperFor(named, material.locale) });
}

async function csvOf({ lang: named }: QuoteArguments, table: ReturnType<typeof quoteTable>): Promise<Uint8Array> {
  const { writeTable } = await import('#files');
  return writeTable(table, 'csv', named === undefined ? {} : { locale: localeAsked(named) });
}
