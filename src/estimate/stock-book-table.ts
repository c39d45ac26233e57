import { type Money, currencyOf, decimalText } from '#money';
import type { Say } from '#text';
import type { PrintedTable, StockBook, StockLine } from '#workshop';

type Cells = readonly (string | number)[];

/** Whole smallest units, and beside them the same as a plain decimal; both empty where nothing is known. */
const amount = (minor: number | null, code: string | null): Cells => {
  const currency = currencyOf(code ?? '');
  return minor === null || currency === undefined ? [minor ?? '', ''] : [minor, decimalText({ minor, currency } satisfies Money)];
};

const PARTS = ['Minor', ''] as const;
const both = (name: string): readonly string[] => PARTS.map((part) => `${name}${part}`);
const truth = (value: boolean | null): string => (value === null ? '' : value ? 'yes' : 'no');

/** The lines of the stock book as a table, each amount to the last unit, what is missing in words. */
export function stockTable({ lines }: StockBook, say: Say): PrintedTable {
  return {
    header: [
      'number', 'boughtOn', 'purchaseInvoice', 'seller', 'sellerAddress', 'description', ...both('purchase'), 'purchaseCurrency', 'eligible',
      'soldOn', 'saleInvoice', 'buyer', 'buyerAddress', ...both('sale'), 'saleCurrency', 'regime', ...both('margin'), ...both('loss'), 'ratePct', 'rateSince', ...both('tax'), 'missing',
    ],
    rows: lines.map((line) => rowOf(line, say)),
  };
}

function rowOf(line: StockLine, say: Say): Cells {
  const { number, boughtOn, purchaseInvoice, seller, description, purchaseMinor, purchaseCurrency, eligible, soldOn, saleInvoice, buyer, saleMinor, saleCurrency, regime, ratePct, rateSince, gaps } = line;
  return [
    number ?? '', boughtOn ?? '', purchaseInvoice, seller.name, seller.address, description, ...amount(purchaseMinor, purchaseCurrency), purchaseCurrency ?? '', truth(eligible),
    soldOn ?? '', saleInvoice, buyer.name, buyer.address, ...amount(saleMinor, saleCurrency), saleCurrency ?? '', regime ?? '',
    ...amount(line.marginMinor, saleCurrency), ...amount(line.lossMinor, saleCurrency), ratePct ?? '', rateSince ?? '', ...amount(line.taxMinor, saleCurrency),
    gaps.map((gap) => say(`stockBook.gap.${gap}`)).join('; '),
  ];
}

/** What was sold under the margin scheme by tax period, each amount to the last unit. */
export function stockTotalsTable({ totals }: StockBook): PrintedTable {
  return {
    header: ['from', 'until', 'currency', 'count', ...both('purchase'), ...both('sale'), ...both('margins'), ...both('losses'), ...both('tax')],
    rows: totals.map(({ from, until, currency, count, purchaseMinor, saleMinor, gainMinor, lossMinor, taxMinor }) => [from, until, currency, count, ...[purchaseMinor, saleMinor, gainMinor, lossMinor, taxMinor].flatMap((minor) => amount(minor, currency))]),
  };
}
