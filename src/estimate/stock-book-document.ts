import { currencyOf, formatMoney } from '#money';
import { type Block, type Cell, type Column, type ReportDocument, type TableBlock, type Tongue, asStated, buildReport, cell, dayOf } from '#report';
import { languageOf } from '#text';
import type { StockBook, StockLine } from '#workshop';
import { gapsWords, numberName, spanWords, taxYearTold, taxYearWords } from './stock-words.ts';

/** What the stock book is printed from. Clock and language come in from outside. */
export interface StockBookMaterial extends Tongue {
  readonly stock: StockBook;
  /** The newest event of the book it was drawn from. */
  readonly head: { readonly seq: number; readonly hash: string };
  /** Day of printing, ISO 8601. */
  readonly printedAt: string;
}

/** The stock book as a report on paper that lies on its long side: totals by tax period, line by line, what is missing, what holds for it. */
export function stockBookDocument(material: StockBookMaterial): ReportDocument {
  const { say, locale, stock, head, printedAt } = material;
  const isDemo = stock.book === 'demo';
  const title = say('stockBook.title');
  return buildReport({
    title, subtitle: subtitleOf(material), language: languageOf(locale), madeAt: printedAt, demo: isDemo, page: 'wide',
    furniture: { runningHead: title, runningFoot: say('proof.foot.record', { seq: head.seq, hash: head.hash.slice(0, 12) }), demo: say('proof.demo'), pageOf: say('proof.pageOf') },
    blocks: [
      ...(isDemo ? [{ type: 'caution', text: say('proof.demo.note') } as const] : []),
      { type: 'paragraph', size: 'body', text: say('stockBook.restoration') },
      { type: 'heading', level: 1, text: say('stockBook.totals') },
      { type: 'paragraph', size: 'body', text: taxYearTold(stock, say, locale) },
      stock.totals.length === 0 ? { type: 'paragraph', size: 'body', text: say('stockBook.totals.none') } : totalsTable(material),
      ...leftOutWords(material),
      { type: 'heading', level: 1, text: say('stockBook.lines') },
      stock.lines.length === 0 ? { type: 'paragraph', size: 'body', text: say('stockBook.lines.none') } : lineTable(material),
      ...gapBlocks(material),
      { type: 'caution', text: say('stockBook.accountant') },
    ],
  });
}

/** Which lines are looked at, and when it was printed. */
function subtitleOf(material: StockBookMaterial): string {
  const { say, locale, stock, printedAt } = material;
  const { which, year, lines } = stock;
  return say('stockBook.subtitle', { which: say(`stockBook.which.${which}`), year: year === null ? say('stockBook.years.all') : taxYearWords(year, stock, locale), count: lines.length, day: dayOf(printedAt, material) });
}

/** Amounts with the code of their currency; words where nothing is known. */
function money(minor: number | null, code: string | null, { say, locale }: Tongue, nothing = say('stockBook.none')): Cell {
  const currency = currencyOf(code ?? '');
  return minor === null || currency === undefined ? cell(nothing, 'quiet') : cell(formatMoney({ minor, currency }, locale));
}

const start = (label: string, width: number): Column => ({ label, align: 'start', width });
const end = (label: string, width: number): Column => ({ label, align: 'end', width });

function totalsTable(material: StockBookMaterial): TableBlock {
  const { say, locale, stock } = material;
  return {
    type: 'table', strips: 1, rowHeads: true, caption: say('stockBook.totals'),
    columns: [start(say(`stockBook.period.${stock.period}`), 3), end(say('stockBook.column.count'), 1.2), end(say('stockBook.column.purchases'), 2), end(say('stockBook.column.sales'), 2), end(say('stockBook.column.gains'), 2), end(say('stockBook.column.losses'), 2), end(say('stockBook.column.tax'), 2)],
    rows: stock.totals.map(({ currency, count, ...sums }) => [
      cell(spanWords(sums, locale), 'strong'), cell(String(count)),
      ...[sums.purchaseMinor, sums.saleMinor, sums.gainMinor, sums.lossMinor].map((minor) => money(minor, currency, material)), { ...money(sums.taxMinor, currency, material), tone: 'strong' as const },
    ]),
  };
}

function leftOutWords({ say, stock: { leftOut } }: StockBookMaterial): readonly Block[] {
  return leftOut.length === 0 ? [] : [{ type: 'caution', text: say('stockBook.leftOut', { count: leftOut.length, numbers: leftOut.map((number) => numberName(number, say)).join(', ') }) }];
}

function lineTable(material: StockBookMaterial): TableBlock {
  const { say, stock } = material;
  const label = (name: 'number' | 'bought' | 'seller' | 'description' | 'purchase' | 'eligible' | 'sold' | 'buyer' | 'sale' | 'margin' | 'tax'): string => say(`stockBook.column.${name}`);
  return {
    type: 'table', strips: 1, rowHeads: true, caption: say('stockBook.lines'),
    columns: [
      start(label('number'), 0.7), start(label('bought'), 1.7), start(label('seller'), 2.8), start(label('description'), 2.4), end(label('purchase'), 1.8), start(label('eligible'), 1.2),
      start(label('sold'), 1.7), start(label('buyer'), 2.8), end(label('sale'), 1.8), end(label('margin'), 1.8), end(label('tax'), 1.8),
    ],
    rows: stock.lines.map((line) => rowOf(line, material)),
  };
}

function rowOf(line: StockLine, material: StockBookMaterial): readonly Cell[] {
  const { say, locale } = material;
  const day = (iso: string | null): string => (iso === null ? say('stockBook.none') : new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone: 'UTC' }).format(new Date(iso)));
  const words = (...parts: readonly string[]): Cell => {
    const stated = parts.filter((part) => part.trim() !== '');
    return stated.length === 0 ? cell(say('stockBook.none'), 'quiet') : cell(stated.join('\n'));
  };
  const unsold = cell(say('stockBook.inStock'), 'quiet');
  const eligible = line.eligible === null ? cell(say('stockBook.none'), 'quiet') : cell(say(line.eligible ? 'papers.truth.yes' : 'papers.truth.no'));
  return [
    line.number === null ? cell(say('stockBook.none'), 'flag') : cell(String(line.number), 'strong'),
    words(day(line.boughtOn), line.purchaseInvoice), words(line.seller.name, line.seller.address), words(line.description), money(line.purchaseMinor, line.purchaseCurrency, material), eligible,
    ...(line.isSold ? [words(day(line.soldOn), line.saleInvoice), words(line.buyer.name, line.buyer.address), money(line.saleMinor, line.saleCurrency, material)] : [unsold, cell(''), cell('')]),
    marginCell(line, material), taxCell(line, material),
  ];
}

/** The margin, or how much was lost. */
function marginCell({ isSold, marginMinor, lossMinor, saleCurrency }: StockLine, material: StockBookMaterial): Cell {
  if (!isSold) return cell('');
  const shown = money(marginMinor, saleCurrency, material, material.say('stockBook.notWorkedOut'));
  return lossMinor === null || lossMinor === 0 ? shown : { ...shown, text: `${shown.text}\n${material.say('stockBook.loss')}` };
}

/** The tax with its rate, or why there is none. */
function taxCell({ isSold, taxMinor, saleCurrency, ratePct, regime }: StockLine, material: StockBookMaterial): Cell {
  const { say } = material;
  if (!isSold) return cell('');
  if (regime !== null && regime !== 'margin') return cell(say(`worth.regime.${regime}`), 'quiet');
  const shown = money(taxMinor, saleCurrency, material, say('stockBook.notWorkedOut'));
  return taxMinor === null || ratePct === null ? shown : { ...shown, text: `${shown.text}\n${say('stockBook.atRate', { rate: asStated(ratePct, material) })}` };
}

/** What is missing, line by line, and numbers that no line has. */
function gapBlocks({ say, stock: { lines, missingNumbers } }: StockBookMaterial): readonly Block[] {
  const items = lines.flatMap((line) => (line.gaps.length === 0 ? [] : [gapsWords(line, say)]));
  const all = [...items, ...(missingNumbers.length === 0 ? [] : [say('stockBook.missingNumbers', { count: missingNumbers.length, numbers: missingNumbers.join(', ') })])];
  return all.length === 0 ? [] : [{ type: 'heading', level: 1, text: say('stockBook.gaps') }, { type: 'list', items: all }];
}
