import type { Instrument } from '#instrument';
import { type Money, decimalText, formatAmount, formatMoney } from '#money';
import { type Block, type KeyValuesBlock, type ReportDocument, type TableBlock, type Tongue, asStated, buildReport, cell, dayOf, statedOr } from '#report';
import { languageOf } from '#text';
import type { PrintedTable, Quote } from '#workshop';
import { type QuoteFigures, quoteFiguresOf } from './quote.ts';

/** What a quote is printed from. Clock and language come in from outside. */
export interface QuoteMaterial extends Tongue {
  readonly instrument: Pick<Instrument, 'name' | 'maker' | 'serial' | 'demo'>;
  readonly quote: Quote;
  readonly head: { readonly seq: number; readonly hash: string };
  /** Day of printing, ISO 8601. */
  readonly printedAt: string;
}

/** A quote as a report: what is offered line by line, the sums, when what is paid, what is not included, and room to accept it whole or by line. */
export function quoteDocument(material: QuoteMaterial): ReportDocument {
  const { say, locale, instrument, quote, head, printedAt } = material;
  const figures = quoteFiguresOf(quote, null);
  const title = say('quote.title', { name: instrument.name });
  return buildReport({
    title, subtitle: say('quote.subtitle', { title: quote.title, version: quote.version }), language: languageOf(locale), madeAt: printedAt, demo: instrument.demo,
    furniture: { runningHead: title, runningFoot: say('proof.foot.record', { seq: head.seq, hash: head.hash.slice(0, 12) }), demo: say('proof.demo'), pageOf: say('proof.pageOf') },
    blocks: [
      ...(instrument.demo ? [{ type: 'caution', text: say('proof.demo.note') } as const] : []),
      { type: 'keyValues', rows: factsOf(material) },
      ...(quote.remark === '' ? [] : [{ type: 'paragraph', size: 'body', text: quote.remark } as const]),
      { type: 'heading', level: 1, text: say('quote.offered') }, lineTable(figures, material),
      { type: 'keyValues', rows: sumRows(figures, material) },
      ...taxWords(material),
      ...stageBlocks(figures, material),
      ...(quote.notIncluded.length === 0 ? [] : [{ type: 'heading', level: 1, text: say('quote.notIncluded') } as const, { type: 'list', items: quote.notIncluded } as const]),
      { type: 'heading', level: 1, text: say('quote.words') },
      { type: 'list', items: [say('quote.words.hidden'), say('quote.words.law'), say('quote.words.version')] },
      ...answerBlocks(material),
    ],
  });
}

const moneyOf = (minor: number, { currency }: QuoteFigures): Money => ({ minor, currency });

function factsOf(material: QuoteMaterial): KeyValuesBlock['rows'] {
  const { say, instrument, quote, printedAt } = material;
  const day = (iso: string | null) => (iso === null ? statedOr(null, material) : cell(dayOf(iso, material)));
  return [
    { label: say('proof.fact.name'), value: cell(instrument.name, 'strong') },
    { label: say('proof.fact.maker'), value: statedOr(instrument.maker, material) },
    { label: say('proof.fact.serial'), value: statedOr(instrument.serial, material) },
    { label: say('quote.fact.number'), value: cell(say('quote.fact.numberOf', { number: quote.id.slice(0, 8), version: quote.version })) },
    { label: say('quote.fact.state'), value: cell(say(`quote.state.${quote.state}`), quote.state === 'draft' ? 'flag' : 'plain') },
    { label: say('quote.fact.sentOn'), value: day(quote.sentOn) },
    { label: say('quote.fact.validUntil'), value: day(quote.validUntil) },
    { label: say('proof.fact.printed'), value: cell(dayOf(printedAt, material)) },
  ];
}

function lineTable(figures: QuoteFigures, { say, locale, quote }: QuoteMaterial): TableBlock {
  const isPart = quote.acceptedLines !== null && quote.acceptedLines.length < quote.lines.length;
  return {
    type: 'table', strips: 1, rowHeads: true, caption: say('quote.offered'),
    columns: [{ label: say('quote.column.what'), align: 'start', width: 6 }, ...(isPart ? [{ label: say('quote.column.taken'), align: 'start', width: 1.6 } as const] : []), { label: say('quote.column.amount', { currency: figures.currency }), align: 'end', width: 2 }],
    rows: figures.lines.map(({ id, words, amountMinor }) => [cell(words), ...(isPart ? [cell(say(quote.acceptedLines?.includes(id) === true ? 'quote.taken' : 'quote.notTaken'))] : []), cell(formatAmount(moneyOf(amountMinor, figures), locale))]),
  };
}

/** Sums of the whole, and of the lines taken where only some were. */
function sumRows(figures: QuoteFigures, material: QuoteMaterial): KeyValuesBlock['rows'] {
  const { say, locale, quote } = material;
  const { tax, includesTax, acceptedLines, lines } = quote;
  const print = (minor: number): string => formatMoney(moneyOf(minor, figures), locale);
  const taxed = tax.regime === 'ordinary' ? [{ label: say(includesTax ? 'quote.sum.taxIn' : 'quote.sum.tax', { rate: asStated(tax.ratePct, material) }), value: cell(print(figures.taxMinor)) }] : [];
  const part = acceptedLines === null || acceptedLines.length === lines.length ? [] : [{ label: say('quote.sum.taken'), value: cell(print(quoteFiguresOf(quote).totalMinor), 'strong') }];
  return [
    ...(includesTax || tax.regime !== 'ordinary' ? [] : [{ label: say('quote.sum.net'), value: cell(print(figures.sumMinor)) }]),
    ...taxed,
    { label: say('quote.sum.total'), value: cell(print(figures.totalMinor), 'strong') },
    ...part,
  ];
}

function taxWords({ say, quote: { tax } }: QuoteMaterial): readonly Block[] {
  return tax.regime === 'ordinary' ? [] : [{ type: 'paragraph', size: 'small', text: say(`quote.tax.${tax.regime}`) }];
}

/** Stages of the part that was taken, else of the whole. */
function stageBlocks(whole: QuoteFigures, { say, locale, quote }: QuoteMaterial): readonly Block[] {
  const figures = quote.acceptedLines === null ? whole : quoteFiguresOf(quote);
  if (figures.stages.length === 0) return [];
  return [
    { type: 'heading', level: 1, text: say('quote.stages') },
    {
      type: 'table', strips: 1, rowHeads: true, caption: say('quote.stages'),
      columns: [{ label: say('quote.column.stage'), align: 'start', width: 6 }, { label: say('quote.column.amount', { currency: figures.currency }), align: 'end', width: 2 }],
      rows: [
        ...figures.stages.map(({ words, amountMinor }) => [cell(words), cell(formatAmount(moneyOf(amountMinor, figures), locale))]),
        [cell(say('quote.sum.total'), 'strong'), cell(formatAmount(moneyOf(figures.totalMinor, figures), locale), 'strong')],
      ],
    },
    { type: 'paragraph', size: 'small', text: say('quote.stages.law') },
  ];
}

/** Room to answer by hand while it is open; afterwards what was answered. */
function answerBlocks(material: QuoteMaterial): readonly Block[] {
  const { say, quote } = material;
  if (quote.answeredOn !== null) return [{ type: 'note', text: say('quote.answered', { state: say(`quote.state.${quote.state}`), day: dayOf(quote.answeredOn, material) }) }];
  return [
    { type: 'heading', level: 1, text: say('quote.answer') },
    { type: 'paragraph', size: 'body', text: say('quote.answer.whole') },
    { type: 'paragraph', size: 'body', text: say('quote.answer.lines') },
    { type: 'paragraph', size: 'body', text: say('quote.answer.sign') },
  ];
}

/** A quote as a table: lines, sums and stages, each to the last unit. */
export function quoteTable({ say, quote }: Pick<QuoteMaterial, 'say' | 'quote'>): PrintedTable {
  const figures = quoteFiguresOf(quote, null);
  const row = (kind: string, id: string, words: string, minor: number): readonly (string | number)[] => [kind, id, words, minor, decimalText(moneyOf(minor, figures)), figures.currency];
  return {
    header: ['kind', 'id', 'words', 'amountMinor', 'amount', 'currency'],
    rows: [
      ...figures.lines.map(({ id, words, amountMinor }) => row('line', id, words, amountMinor)),
      ...(quote.tax.regime === 'ordinary' ? [row('tax', '', `${String(quote.tax.ratePct)} %`, figures.taxMinor)] : []),
      row('total', '', say('quote.sum.total'), figures.totalMinor),
      ...figures.stages.map(({ words, amountMinor }) => row('stage', '', words, amountMinor)),
      ...(quote.acceptedLines === null ? [] : [row('accepted', quote.acceptedLines.join(' '), say('quote.sum.taken'), quoteFiguresOf(quote).totalMinor)]),
    ],
  };
}
