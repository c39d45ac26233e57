import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { fileDesk } from './support/desk.ts';
import { readPdf } from './support/pdf.ts';

/** Purchase and sale in pence, month of the sale: with margins, a loss, nought, and cents that round. */
const TRADES = [[150_000, 200_000, 1], [1_000_000, 1_200_000, 2], [333_333, 333_334, 2], [480_000, 430_000, 3], [77_777, 99_991, 5], [100, 100, 5], [1, 1_000_006, 11]] as const;
const desk = fileDesk({}, async () => {
  piano = (await desk.call<{ id: string }>('POST', '/api/pianos', { name: 'Bought piano, invented', kind: 'grand' })).id;
  for (const [index, [purchaseMinor, saleMinor, month]] of TRADES.entries()) {
    const details = { name: 'Somebody, invented', address: 'Somewhere', words: '' };
    const shared = { currency: 'GBP', details };
    const { id } = await desk.call<{ id: string }>('POST', '/api/shop/cards', { kind: 'acquisition', number: index + 1, on: '2030-06-01', description: 'Grand, invented', priceMinor: purchaseMinor, eligible: true, ...shared });
    await desk.call('POST', '/api/shop/cards', { kind: 'sale', acquisition: id, on: `2031-${String(month).padStart(2, '0')}-15`, invoice: 'V', priceMinor: saleMinor, place: 'GB', ...shared });
  }
});
let piano = '';
const tablet = { viewport: { width: 1024, height: 768 } } as const;
const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, colorScheme: 'dark' } as const;

interface Stock { readonly lines: readonly { readonly number: number; readonly taxMinor: number | null; readonly pianoId: string | null; readonly isSold: boolean; readonly gaps: readonly string[] }[]; readonly totals: readonly Readonly<Record<string, number | string>>[] }
const stockBook = (query = ''): Promise<Stock> => desk.call<Stock>('GET', `/api/shop/stock-book${query}`);
const SUMS = ['purchaseMinor', 'saleMinor', 'gainMinor', 'lossMinor', 'taxMinor'] as const;
/** Whole pence of an amount as printed: `GBP 1,234.50`. */
const minorOf = (text: string): number => Number(text.replaceAll(/[^\d-]/gu, ''));
const shownSums = (page: Page): Promise<readonly (readonly number[])[]> => page.locator('tr[data-period]').evaluateAll((rows) => rows.map((row) => [...row.querySelectorAll('td[data-sum]')].map((cell) => Number(cell.textContent.replaceAll(/[^\d-]/gu, '')))));

describe('the stock book', () => {
  it('has the same whole pence on the screen, in the files and in print', async () => {
    const { totals, lines } = await stockBook();
    expect(lines[0]?.taxMinor).toBe(8333);
    const wanted = totals.map((total) => SUMS.map((name) => total[name]));
    const page = await desk.open('/stock-book', tablet);
    await page.locator('tr[data-period]').first().waitFor();
    expect(await shownSums(page)).toEqual(wanted);
    const csv = await (await fetch(`${desk.bench.url}/api/shop/stock-book.csv?table=totals`)).text();
    expect(csv.trim().split('\r\n').slice(1).map((row) => [4, 6, 8, 10, 12].map((at) => Number(row.split(',')[at])))).toEqual(wanted);
    const { pages } = await readPdf(new Uint8Array(await (await fetch(`${desk.bench.url}/api/shop/stock-book.pdf?locale=en-GB`)).arrayBuffer()));
    const printed = (pages[0] ?? '').replaceAll(/\s+/gu, ' ').split('By tax period')[1]?.split(' Seller ')[0] ?? '';
    expect([...printed.matchAll(/GBP ?[\d,]+\.\d\d/gu)].map(([amount]) => minorOf(amount))).toEqual(wanted.flat());
    await expectAccessible(page);
    await page.getByLabel('Totals by', { exact: true }).selectOption('year');
    await expect.poll(async () => (await shownSums(page)).length).toBe(1);
    await page.getByLabel('Show', { exact: true }).selectOption('open');
    await page.getByText('No piano stands in what is shown.').waitFor();
    await page.context().close();
  });

  it('is written at the piano by keyboard, names what is missing, and takes a sale back', async () => {
    const page = await desk.open(`/pianos/${piano}/worth`, tablet);
    await page.getByRole('button', { name: 'Note a purchase' }).press('Enter');
    const dialog = page.getByRole('dialog');
    expect(await dialog.getByLabel('Number in the stock book').inputValue()).toBe('8');
    await dialog.getByLabel('Purchase price').fill('1,234.567');
    await dialog.getByLabel('Currency').fill('gbp');
    await page.getByRole('button', { name: 'Save', exact: true }).press('Enter');
    await dialog.locator('.field-error').first().waitFor();
    await dialog.getByLabel('Purchase price').fill('1,234.50');
    await dialog.getByLabel('Bought on').fill('2031-06-01');
    await dialog.getByLabel('Bought without tax').selectOption('yes');
    await expectAccessible(page);
    await page.getByRole('button', { name: 'Save', exact: true }).press('Enter');
    await page.getByText('! seller missing').waitFor();
    await page.getByRole('button', { name: /^Note the sale/u }).press('Enter');
    await dialog.getByLabel('Sold on').fill('2031-07-01');
    await dialog.getByLabel('Selling price, tax included').fill('2000');
    await dialog.getByLabel('Taxed in').selectOption('GB');
    await page.getByRole('button', { name: 'Save', exact: true }).press('Enter');
    await page.getByText(/at 20 %, the rate since/u).waitFor();
    await expectAccessible(page);
    // (2000.00 − 1234.50)/6 = 127.583…
    expect((await stockBook()).lines.find(({ pianoId }) => pianoId === piano)?.taxMinor).toBe(12_758);
    await page.locator('body').press('Control+z');
    await expect.poll(async () => (await stockBook()).lines.find(({ pianoId }) => pianoId === piano)?.isSold).toBe(false);
    await page.getByRole('button', { name: /^Note the sale/u }).waitFor();
    await page.context().close();
  });

  it('counts quarters and years from the tax year stated once in the settings, by keyboard', async () => {
    const page = await desk.open('/stock-book', tablet);
    await page.getByText('Where the tax year begins is not stated').waitFor();
    await page.getByRole('link', { name: 'State the tax year' }).press('Enter');
    await page.getByRole('button', { name: 'State the tax year' }).press('Enter');
    const month = page.getByLabel('Tax year begins on the first of');
    await month.focus();
    // The list is closed: letters choose from it.
    await page.keyboard.type('Feb');
    await page.getByText('Quarters end in April, July, October, January.').waitFor();
    await expectAccessible(page);
    await expectNoSidewaysScroll(page);
    await page.getByRole('button', { name: 'Save', exact: true }).press('Enter');
    await page.getByText('Tax years begin in February; quarters count from there.').waitFor();
    await page.goBack();
    const heads = page.locator('tr[data-period] th');
    await expect.poll(async () => (await heads.allTextContents()).map((text) => text.replaceAll(/\s/gu, ' '))).toEqual(['1 Nov 2030 – 31 Jan 2031', '1 Feb – 30 Apr 2031', '1 May – 31 Jul 2031', '1 Nov 2031 – 31 Jan 2032']);
    expect(await shownSums(page)).toEqual((await stockBook()).totals.map((total) => SUMS.map((name) => total[name])));
    await page.getByLabel('Tax year', { exact: true }).selectOption({ value: '2030' });
    await expect.poll(async () => (await shownSums(page)).length).toBe(1);
    await expectAccessible(page);
    await page.locator('body').press('Control+z');
    await page.getByText('Where the tax year begins is not stated').waitFor();
    await page.context().close();
  });

  it('is reached by a command and read on a telephone', async () => {
    const page = await desk.open('/pianos', phone);
    await page.keyboard.press('g');
    await page.keyboard.press('v');
    await page.getByRole('heading', { level: 1, name: /Stock book/u }).waitFor();
    await page.locator('.stock-line').first().waitFor();
    await expectAccessible(page);
    await expectNoSidewaysScroll(page);
    await page.getByRole('button', { name: 'Note a purchase' }).tap();
    await page.getByRole('dialog').getByLabel('Number in the stock book').waitFor();
    await expectAccessible(page);
    await expectNoSidewaysScroll(page);
    await page.context().close();
  });
});

it('complains of nothing on the console', () => {
  expect(desk.complaints).toEqual([]);
});
