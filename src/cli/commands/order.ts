import path from 'node:path';
import { type Instrument, compassOf, states } from '#instrument';
import { type OrderDocumentInput, type OrderField, type OrderFieldName, type OrderTerms, chartTable, checkOrderTerms, hasStrings, orderDocument, orderFieldNames, orderFields, stringOrderOf, stringingChart, wireTable, woundSheetTable } from '#order';
import type { Issue } from '#result';
import { createSay } from '#text';
import { parseMeasure } from '#units';
import { stayOf } from '#workshop';
import type { CommandModule, InferredOptionTypes } from 'yargs';
import { localeAsked, paperFor, writeWhole } from '../document-file.ts';
import { refused } from '../failure.ts';
import { cycleOf } from '../file-options.ts';
import { say } from '../language.ts';
import { note, printJson } from '../output.ts';
import { documentOptions, optionOf } from '../prove-options.ts';
import { dataOption, findInstrument, instrumentPositional, withStore } from '../with-store.ts';

const { paper, lang, json } = documentOptions;
const options = {
  out: { type: 'string', demandOption: true, requiresArg: true, describe: say('cli.order.out') },
  chart: { type: 'boolean', default: false, describe: say('cli.order.chart') },
  table: { choices: ['wound', 'wire'] as const, default: 'wound' as const, describe: say('cli.order.table') },
  state: { choices: states, default: 'planned' as const, describe: say('cli.order.state') },
  cycle: { type: 'string', requiresArg: true, describe: say('cli.cycle') },
  paper, lang, json, ...dataOption,
} as const;

/** Options of what is stated, as typed, so that a decimal comma is read as one. */
const statedOptions = Object.fromEntries(orderFieldNames.map((name) => [optionOf(name).slice(2), { type: 'string' as const, requiresArg: true, group: say('cli.order.group.stated'), describe: describedField(name) }]));

type OrderArguments = InferredOptionTypes<typeof options> & { readonly instrument: string } & Readonly<Partial<Record<OrderFieldName, string>>>;

/** `order INSTRUMENT --out order.pdf`, `--chart` for the stringing chart; a name ending in .csv writes tables. */
export const order: CommandModule<object, OrderArguments> = {
  command: 'order <instrument>',
  describe: say('cli.order'),
  builder: (yargs) => yargs.positional('instrument', instrumentPositional).options(options).options(statedOptions) as never,
  handler: async (given) => {
    const locale = localeAsked(given.lang);
    const terms = statedTerms(given, locale);
    const kind = kindOf(given.out);
    const input = await inputOf(given, locale, terms);
    await writeWhole(given.out, await (kind === 'pdf' ? pdfOf(given, input) : csvOf(given, input)));
    await report(given, input);
  },
};

function describedField(name: OrderFieldName): string {
  const { unit, usual }: OrderField = orderFields[name];
  return `${say(`order.field.${name}`)}${unit === '1' ? '' : ` (${unit === 'pct' ? '%' : unit})`}${usual === undefined ? '' : ` [${String(usual)}]`}`;
}

function kindOf(out: string): 'pdf' | 'csv' {
  const ending = path.extname(out).toLowerCase();
  if (ending === '.pdf' || ending === '.csv') return ending === '.pdf' ? 'pdf' : 'csv';
  throw refused([{ code: 'choice', path: '--out', given: out, allowed: 'a name ending in .pdf or .csv', params: { choices: '.pdf, .csv' } }]);
}

function statedTerms(given: OrderArguments, locale: string): OrderTerms {
  const issues: Issue[] = [];
  const terms: Partial<Record<OrderFieldName, number>> = {};
  for (const name of orderFieldNames) {
    const text = given[name];
    if (text === undefined) continue;
    const parsed = parseMeasure(text, { unit: orderFields[name].unit, path: optionOf(name), locale });
    if (parsed.ok) terms[name] = parsed.value.value;
    else issues.push(...parsed.issues);
  }
  const checked = checkOrderTerms(terms);
  if (!checked.ok) issues.push(...checked.issues.map((issue) => ({ ...issue, path: optionOf(issue.path) })));
  if (issues.length > 0) throw refused(issues);
  return terms;
}

async function inputOf(given: OrderArguments, locale: string, orderTerms: OrderTerms): Promise<OrderDocumentInput> {
  const { state } = given;
  return withStore(given, async (store) => {
    const { id, cycle: current }: Instrument = await findInstrument(store, given.instrument);
    const cycle = cycleOf(given.cycle, current);
    const piano = await store.getPiano(id);
    const { instrument, head } = piano;
    const found = stringOrderOf({ instrument, readings: await store.listReadings(id, cycle), cycle, state, terms: stayOf(piano, cycle).scale, orderTerms });
    if (!hasStrings(found)) throw refused([], say('cli.order.nothing', { state: say(`proof.state.${state}`) }));
    return { instrument, order: found, cycle, head, printedAt: new Date().toISOString(), locale, say: createSay(locale) };
  });
}

async function pdfOf({ chart, paper: named }: OrderArguments, input: OrderDocumentInput): Promise<Uint8Array> {
  const { renderPdf } = await import('#files');
  return renderPdf(chart ? stringingChart(input) : orderDocument(input), { paper: paperFor(named, input.locale) });
}

async function csvOf({ chart, table, lang: named }: OrderArguments, { order: found, instrument, locale }: OrderDocumentInput): Promise<Uint8Array> {
  const { writeTable } = await import('#files');
  const printed = chart ? chartTable(found, compassOf(instrument)) : table === 'wire' ? wireTable(found) : woundSheetTable(found, compassOf(instrument));
  return writeTable(printed, 'csv', named === undefined ? {} : { locale });
}

async function report(given: OrderArguments, { order: { notes, wire, gaps, state } }: OrderDocumentInput): Promise<void> {
  const count = (kind: 'wound' | 'plain'): number => notes.filter((one) => one.wire?.kind === kind).length;
  const counts = { wound: count('wound'), plain: count('plain') };
  if (given.json) return printJson({ out: given.out, state, ...counts, wire, gaps });
  note(say('cli.order.written', { path: given.out, ...counts }));
  for (const { what, keys } of gaps) note(say('order.gap', { text: say(`order.gap.${what}`), count: keys.length, notes: keys.join(', ') }));
}
