import { runOperation } from '#operation';
import { mustBe } from '#result';
import { textOf } from '#report';
import { createSay } from '#text';
import { currencyOf, parseMoney } from '#money';
import { type ShopCard, type StockTotal, shopCardSchema } from '#workshop';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bookShown, marginVatOperation, nextStockNumber, rateOn, ratesOn, stockBookDocument, stockBookOf, stockTable, stockTotalsTable, taxYearWords } from './index.ts';
import { taxPeriodOf } from './tax-period.ts';

const kept = { at: '2031-01-01T00:00:00Z', changedAt: '2031-01-01T00:00:00Z', sequence: 0 };
const details = { name: 'Somebody, invented', address: 'Somewhere', words: '' };
const bought = (id: string, fields: object = {}, workshopId = 'shop'): ShopCard =>
  shopCardSchema.parse({ kind: 'acquisition', id, workshopId, ...kept, number: 1, on: '2031-01-10', description: 'Grand, invented', priceMinor: 850_000, currency: 'GBP', eligible: true, details, ...fields });
const sold = (acquisition: string, fields: object = {}, workshopId = 'shop'): ShopCard =>
  shopCardSchema.parse({ kind: 'sale', id: `${acquisition}-sold`, acquisition, workshopId, ...kept, on: '2031-05-20', invoice: 'V 1', priceMinor: 3_200_000, currency: 'GBP', place: 'GB', details, ...fields });
const begins = (fromMonth: number, workshopId = 'shop'): ShopCard => shopCardSchema.parse({ kind: 'taxYear', id: String(fromMonth), workshopId, ...kept, fromMonth, details: null });
const periodsOf = (cards: readonly ShopCard[], asked: object = {}): readonly string[] => stockBookOf(cards, asked).totals.map(({ from, until }) => `${from} ${until}`);
const [say, locale] = [createSay('en-GB'), 'en-GB'];

describe('a line of the stock book', () => {
  it('has the margin and its tax at the rate of the day, restoration left out (worked by hand: 23500/6)', () => {
    const { lines: [line], totals } = stockBookOf([bought('a'), sold('a')]);
    expect(line).toMatchObject({ number: 1, isSold: true, marginMinor: 2_350_000, lossMinor: 0, taxMinor: 391_667, ratePct: 20, rateSince: '2011-01-04', gaps: [] });
    expect(totals).toEqual([{ from: '2031-04-01', until: '2031-06-30', currency: 'GBP', count: 1, purchaseMinor: 850_000, saleMinor: 3_200_000, gainMinor: 2_350_000, lossMinor: 0, taxMinor: 391_667 }]);
  });

  it('has a loss without tax, which lessens no other margin of its period', () => {
    const { lines, totals } = stockBookOf([bought('a'), sold('a'), bought('b', { number: 2, priceMinor: 900_000 }), sold('b', { priceMinor: 500_000 })]);
    expect(lines[1]).toMatchObject({ marginMinor: -400_000, lossMinor: 400_000, taxMinor: 0, gaps: [] });
    expect(totals).toMatchObject([{ count: 2, gainMinor: 2_350_000, lossMinor: 400_000, taxMinor: 391_667 }]);
  });

  it('names what is missing and works nothing out of it', () => {
    const gapsOf = (purchase: object, sale?: object): readonly string[] => stockBookOf([bought('a', purchase), ...(sale === undefined ? [] : [sold('a', sale)])]).lines[0]?.gaps ?? [];
    expect(gapsOf({ on: null, priceMinor: null, eligible: null, description: ' ', details: null })).toEqual(['boughtOn', 'seller', 'sellerAddress', 'description', 'purchasePrice', 'eligible']);
    expect(gapsOf({}, { on: null, priceMinor: null, invoice: '', details: null })).toEqual(['soldOn', 'buyer', 'salePrice', 'saleInvoice', 'rate']);
    expect(gapsOf({}, { currency: 'EUR' })).toEqual(['currencies']);
    expect(gapsOf({ eligible: false }, {})).toEqual(['notEligible']);
    expect(gapsOf({}, { place: 'NO' })).toEqual(['rate']);
    expect(gapsOf({}, { ratePct: 5 })).toEqual(['rateDiffers']);
    expect(gapsOf({ on: '2031-06-01' }, {})).toEqual(['order']);
    const none = stockBookOf([bought('a', { priceMinor: null }), sold('a')]);
    expect(none.lines[0]).toMatchObject({ marginMinor: null, lossMinor: null, taxMinor: null, gaps: ['purchasePrice'] });
    expect([none.totals, none.leftOut]).toEqual([[], [1]]);
  });

  it('shows a sale whose purchase was withdrawn, and numbers that stand twice or nowhere', () => {
    const { lines, leftOut, missingNumbers } = stockBookOf([bought('a', { number: 2 }), bought('b', { number: 2 }), bought('c', { number: 5 }), sold('gone')]);
    expect(lines.map(({ number, gaps }) => [number, ...gaps])).toEqual([[2, 'numberTwice'], [2, 'numberTwice'], [5], [null, 'acquisition']]);
    expect([leftOut, missingNumbers]).toEqual([[null], [1, 3, 4]]);
  });

  it('of a sale outside the scheme is in no total', () => {
    const { lines: [line], totals, leftOut } = stockBookOf([bought('a'), sold('a', { regime: 'export' })]);
    expect(line).toMatchObject({ marginMinor: 2_350_000, taxMinor: null, ratePct: null, gaps: [] });
    expect([totals, leftOut]).toEqual([[], []]);
  });
});

describe('what is asked of the stock book', () => {
  const cards = [
    bought('a', { number: 1, on: '2029-03-01' }), sold('a', { on: '2030-12-31' }), bought('b', { number: 2, on: '2030-12-31' }), sold('b', { on: '2031-01-01' }),
    bought('c', { number: 3, on: '2031-02-01' }), bought('d', { number: 4, on: null }),
  ];
  const numbers = (asked: object): readonly unknown[] => stockBookOf(cards, asked).lines.map(({ number }) => number);

  it('is by year, in stock at its end, or sold in it; a day that is not known keeps a line in', () => {
    expect(numbers({})).toEqual([1, 2, 3, 4]);
    expect(numbers({ which: 'open' })).toEqual([3, 4]);
    expect(numbers({ which: 'sold' })).toEqual([1, 2]);
    expect(numbers({ year: 2030 })).toEqual([1, 2, 4]);
    expect(numbers({ year: 2030, which: 'open' })).toEqual([2, 4]);
    expect(numbers({ year: 2030, which: 'sold' })).toEqual([1]);
    expect(stockBookOf(cards).years).toEqual([2029, 2030, 2031]);
  });

  it('totals only the sales of its year, by month, quarter or year', () => {
    expect(periodsOf(cards)).toEqual(['2030-10-01 2030-12-31', '2031-01-01 2031-03-31']);
    expect(periodsOf(cards, { year: 2030 })).toEqual(['2030-10-01 2030-12-31']);
    expect(periodsOf(cards, { period: 'month' })).toEqual(['2030-12-01 2030-12-31', '2031-01-01 2031-01-31']);
    expect(periodsOf(cards, { period: 'year' })).toEqual(['2030-01-01 2030-12-31', '2031-01-01 2031-12-31']);
    expect(periodsOf(cards, { year: 2030, which: 'open' })).toEqual([]);
  });

  it('goes by the tax year the shop stated last, which no other book goes by', () => {
    const stated = [...cards, begins(2), begins(4), begins(11, 'demo')];
    expect(stockBookOf(stated)).toMatchObject({ taxYearFrom: 4, years: [2028, 2030] });
    expect(stockBookOf(stated, { book: 'demo' }).taxYearFrom).toBe(11);
    expect(stockBookOf(cards).taxYearFrom).toBeNull();
    expect(periodsOf(stated)).toEqual(['2030-10-01 2030-12-31', '2031-01-01 2031-03-31']);
    expect(periodsOf(stated, { period: 'year' })).toEqual(['2030-04-01 2031-03-31']);
    expect(periodsOf([...cards, begins(3)])).toEqual(['2030-12-01 2031-02-28']);
  });

  it('of a tax year holds its whole periods, over the turn of the calendar too', () => {
    const stated = [...cards, begins(2)];
    expect(stockBookOf(stated, { year: 2030 }).lines.map(({ number }) => number)).toEqual([1, 2, 4]);
    expect(stockBookOf(stated, { year: 2030 }).totals).toMatchObject([{ from: '2030-11-01', until: '2031-01-31', count: 2 }]);
    expect(stockBookOf(stated, { year: 2030, which: 'open' }).lines.map(({ number }) => number)).toEqual([4]);
    expect(stockBookOf(stated, { year: 2031 }).lines.map(({ number }) => number)).toEqual([3, 4]);
    expect(taxYearWords(2030, stockBookOf(stated), 'en-GB').replaceAll(/\s/gu, ' ')).toBe('1 Feb 2030 – 31 Jan 2031');
    expect(taxYearWords(2030, stockBookOf(cards), 'en-GB')).toBe('2030');
  });

  it('never mixes the demonstration with the shop’s own', () => {
    const demo = [bought('x', { number: 9 }, 'demo'), sold('x', {}, 'demo')];
    expect([bookShown(cards), bookShown(demo), bookShown([]), bookShown([...cards, ...demo]), bookShown(cards, 'demo')]).toEqual(['shop', 'demo', 'shop', 'shop', 'demo']);
    expect(stockBookOf([...cards, ...demo]).lines).toHaveLength(4);
    expect(stockBookOf([...cards, ...demo], { book: 'demo' }).lines.map(({ number }) => number)).toEqual([9]);
    expect([nextStockNumber([...cards, ...demo], 'shop'), nextStockNumber(demo, 'demo'), nextStockNumber([], 'shop')]).toEqual([5, 10, 1]);
  });
});

describe('a tax period', () => {
  it('holds its day, and each is followed by the next without a gap', () => {
    fc.assert(fc.property(fc.date({ min: new Date('1900-01-01'), max: new Date('2999-12-31'), noInvalidDate: true }), fc.constantFrom('month', 'quarter', 'year'), fc.integer({ min: 1, max: 12 }), (moment, period, fromMonth) => {
      const day = moment.toISOString().slice(0, 10);
      const { from, until } = taxPeriodOf(day, period, fromMonth);
      expect([from <= day, day <= until, from.slice(8)]).toEqual([true, true, '01']);
      const next = new Date(Date.parse(until) + 86_400_000).toISOString().slice(0, 10);
      expect(taxPeriodOf(next, period, fromMonth).from).toBe(next);
      expect(taxPeriodOf(until, period, fromMonth)).toEqual({ from, until });
    }), { seed: 20_261_126, numRuns: 300 });
  });
});

describe('rates of a day', () => {
  it('change on the day they come into force, and are not known before the first', () => {
    const rate = (place: string, day: string): number | undefined => rateOn(place, day)?.ratePct;
    expect([rate('GB', '2011-01-03'), rate('GB', '2011-01-04'), rate('GB-NIR', '2031-01-01')]).toEqual([17.5, 20, 20]);
    expect([rate('DE', '2020-06-30'), rate('DE', '2020-12-31'), rate('DE', '2021-01-01')]).toEqual([19, 16, 19]);
    expect([rate('DE', '1990-01-01'), rate('NO', '2031-01-01')]).toEqual([undefined, undefined]);
    expect(ratesOn('2020-08-01').find(({ place }) => place === 'DE')?.ratePct).toBe(16);
  });
});

const minor = fc.integer({ min: 0, max: 9_000_000_000 });
const trade = fc.record({ purchaseMinor: minor, saleMinor: minor, month: fc.integer({ min: 1, max: 12 }), currency: fc.constantFrom('GBP', 'JPY', 'KWD'), rounding: fc.constantFrom('half-up', 'half-even', 'down'), ratePct: fc.constantFrom(20, 19, 17.5, 8.1, 0) });

describe('totals of many pianos', () => {
  // Drawn from a fixed seed: the same books at each run.
  it('are on paper, in the tables and line by line the same whole units, which margin-vat works out', () => {
    fc.assert(fc.property(fc.array(trade, { minLength: 1, maxLength: 25 }), (trades) => {
      const cards = trades.flatMap(({ purchaseMinor, saleMinor, month, currency, rounding, ratePct }, index) => {
        const id = String(index);
        return [bought(id, { number: index + 1, priceMinor: purchaseMinor, currency }), sold(id, { on: `2031-${String(month).padStart(2, '0')}-15`, priceMinor: saleMinor, currency, rounding, ratePct })];
      });
      const stock = stockBookOf(cards);
      trades.forEach(({ month: _month, ...given }, index) => {
        const { marginMinor, vatMinor } = mustBe(runOperation(marginVatOperation, given));
        expect(stock.lines[index]).toMatchObject({ marginMinor, taxMinor: vatMinor });
      });
      const sum = (name: 'taxMinor' | 'lossMinor', code: string): number => stock.lines.filter(({ saleCurrency }) => saleCurrency === code).reduce((total, line) => total + (line[name] ?? 0), 0);
      for (const code of ['GBP', 'JPY', 'KWD']) {
        const own = stock.totals.filter(({ currency }) => currency === code);
        expect([own.reduce((all, { taxMinor }) => all + taxMinor, 0), own.reduce((all, { lossMinor }) => all + lossMinor, 0)]).toEqual([sum('taxMinor', code), sum('lossMinor', code)]);
      }
      const SUMS = ['purchaseMinor', 'saleMinor', 'gainMinor', 'lossMinor', 'taxMinor'] as const;
      const wanted = stock.totals.map((total: StockTotal) => [total.from, total.until, total.currency, total.count, ...SUMS.map((name) => total[name])]);
      expect(stockTotalsTable(stock).rows.map((row) => [...row.slice(0, 4), ...[4, 6, 8, 10, 12].map((at) => row[at])])).toEqual(wanted);
      const { header, rows } = stockTable(stock, say);
      expect(rows.map((row) => row[header.indexOf('taxMinor')])).toEqual(stock.lines.map(({ taxMinor }) => taxMinor));
      const document = stockBookDocument({ stock, head: { seq: 1, hash: 'abc' }, say, locale, printedAt: '2032-01-01T00:00:00Z' });
      const printed = document.blocks.flatMap((block) => (block.type === 'table' && block.columns.length === 7 ? block.rows : []));
      const read = (text: string, code: string): number => mustBe(parseMoney(text, { currency: currencyOf(code) ?? 'GBP' as never, locale })).minor;
      expect(printed.map((row, index) => row.slice(2).map(({ text }) => read(text, stock.totals[index]?.currency ?? '')))).toEqual(stock.totals.map((total) => SUMS.map((name) => total[name])));
      expect(textOf(document)).toContain('What the restoration cost');
    }), { seed: 20_261_126, numRuns: 120 });
  });
});
