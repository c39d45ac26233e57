import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { type Desk, fileDesk } from './support/desk.ts';
import { readPdf } from './support/pdf.ts';

const desk = fileDesk({ demo: true });

async function onProof(piano: string, options: Parameters<Desk['open']>[1], look: (page: Page) => Promise<void>): Promise<void> {
  const page = await desk.open(`/pianos/${piano}/proof`, options);
  await page.locator('.proof-page').waitFor();
  await look(page);
  await page.context().close();
}

/** The PDF a page's link leads to. */
async function pdfOf(page: Page): Promise<Uint8Array> {
  const address = await page.getByRole('link', { name: /PDF/u }).getAttribute('href');
  const response = await fetch(desk.bench.url + String(address));
  expect(response.status).toBe(200);
  expect(response.headers.get('content-type')).toBe('application/pdf');
  return new Uint8Array(await response.arrayBuffer());
}

describe('the proof on screen', () => {
  it('says what the print says: the counts, and every heading', async () => {
    await onProof(desk.demo, {}, async (page) => {
      const { pages } = await readPdf(await pdfOf(page));
      const printed = pages.join(' ').replace(/\s+/gu, ' ');
      expect(pages.length).toBeGreaterThanOrEqual(8);
      expect(pages.length).toBeLessThanOrEqual(22);
      const counts = await page.locator('.report-headline strong').allInnerTexts();
      expect(counts).toEqual(['57 of 88', '88 of 88']);
      const headings = await page.locator('.report h2').allInnerTexts();
      expect(headings.length).toBeGreaterThan(6);
      expect([...counts, ...headings].filter((words) => !printed.includes(words))).toEqual([]);
    });
  });

  it('opens its figures to how they were made: a sum over the keys, a weight of one key, a string, a bearing', async () => {
    await onProof(desk.demo, {}, async (page) => {
      for (const [table, row, operation] of [['Summary', 'Largest step between neighbours', 'evenness'], ['As found, key by key', '40', 'touch-weight'], ['Strings, As found, note by note', '40', 'plain-string'], ['Bearing, As found, note by note', '40', 'bearing']] as const) {
        const inRow = page.getByRole('region', { name: table, exact: true }).getByRole('row').filter({ has: page.getByRole('rowheader', { name: row, exact: true }) });
        await inRow.getByRole('button').first().focus();
        await page.keyboard.press('Enter');
        await page.getByRole('dialog').getByText(`wrestplank calc ${operation} --json`).waitFor();
        await page.keyboard.press('Escape');
        await page.getByRole('dialog').waitFor({ state: 'detached' });
      }
    });
  });

  it('prints on the paper chosen, in the language shown', async () => {
    await onProof(desk.demo, { locale: 'de-DE' }, async (page) => {
      const a4 = await readPdf(await pdfOf(page));
      await page.getByRole('radio', { name: 'Letter' }).focus();
      await page.keyboard.press('Space');
      const letter = await readPdf(await pdfOf(page));
      expect([a4, letter].map(({ widthPt, heightPt }) => `${String(Math.round(widthPt))} ${String(Math.round(heightPt))}`)).toEqual(['595 842', '612 792']);
      expect(a4.pages.join(' ')).toContain('Niedergewicht');
    });
  });

  it('warns of what is missing before it is printed', async () => {
    const { id } = await desk.call<{ id: string }>('POST', '/api/pianos', { name: 'Half weighed, invented', kind: 'grand', firstMidi: 21, lastMidi: 108 });
    await onProof(id, {}, async (page) => {
      await page.getByRole('link', { name: 'Weigh the keys' }).waitFor();
    });
    const entries = [{ quantity: 'downWeightG', scope: 'key', index: 40, typed: '49' }, { quantity: 'upWeightG', scope: 'key', index: 40, typed: '25' }];
    await desk.call('POST', `/api/pianos/${id}/readings`, { cycle: 1, state: 'found', locale: 'en', entries });
    await onProof(id, {}, async (page) => {
      await page.getByText('No key has been weighed as finished yet', { exact: false }).waitFor();
      await page.getByText('What is to be even has not been said', { exact: false }).waitFor();
      await page.getByText('As found: 87 of 88 keys without down and up weight.', { exact: false }).waitFor();
    });
  });
});

const looks = [
  { colorScheme: 'light', viewport: { width: 1280, height: 900 } },
  { colorScheme: 'dark', viewport: { width: 1024, height: 768 }, locale: 'de-DE' },
  { colorScheme: 'dark', viewport: { width: 390, height: 844 } },
] as const;

it.each(looks)('is accessible and keeps within the page, $colorScheme, $viewport.width wide', async (look) => {
  await onProof(desk.demo, look, async (page) => {
    await page.waitForLoadState('networkidle');
    await expectAccessible(page);
    await expectNoSidewaysScroll(page);
  });
});

it('complains of nothing on the console', () => {
  expect(desk.complaints).toEqual([]);
});
