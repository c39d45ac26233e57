import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { type Desk, fileDesk } from './support/desk.ts';
import { readPdf } from './support/pdf.ts';

const desk = fileDesk({ demo: true }, async () => {
  fresh = await weighedPiano();
});
let fresh = '';

/** A piano with its naturals and sharps weighed, two keys of which rub. */
async function weighedPiano(): Promise<string> {
  const { id } = await desk.call<{ id: string }>('POST', '/api/pianos', { name: 'Weighed piano, invented', kind: 'grand', firstMidi: 21, lastMidi: 108 });
  await desk.call('PUT', `/api/pianos/${id}/intents/1`, { even: 'downWeight', targetG: 49, toleranceG: 3, upWeightMinG: 18 });
  const entries = Array.from({ length: 88 }, (_, index) => index + 1).flatMap((key) => {
    const rubs = key === 40 || key === 60 ? 6 : 0;
    return [['downWeightG', 49 + rubs], ['upWeightG', 25 - rubs]].map(([quantity, value]) => ({ quantity, scope: 'key', index: key, repeat: 1, typed: String(value) }));
  });
  await desk.call('POST', `/api/pianos/${id}/readings`, { sendId: '7d1a9c86-5b1e-4d0f-9c55-0f6a0e3f5a11', cycle: 1, state: 'found', locale: 'en', sessionId: null, entries });
  return id;
}

async function onWork(piano: string, options: Parameters<Desk['open']>[1], look: (page: Page) => Promise<void>): Promise<void> {
  const page = await desk.open(`/pianos/${piano}/work`, options);
  await page.locator('.work-page').waitFor();
  await look(page);
  await page.context().close();
}

describe('jobs from the findings', () => {
  it('are taken over, ticked, undone with Ctrl Z, and outlive a reload', async () => {
    await onWork(fresh, {}, async (page) => {
      const take = page.getByRole('button', { name: /^Take \d+ jobs? from the findings$/u });
      await take.focus();
      await page.keyboard.press('Enter');
      await take.waitFor({ state: 'detached' });
      const c4 = page.getByRole('checkbox', { name: /^C4/u });
      await c4.first().waitFor();
      const jobs = await page.getByRole('checkbox').count();
      const headings = await page.locator('.work-stage h2').allInnerTexts();
      expect(headings).toEqual([...headings].sort((a, b) => order(a) - order(b)));

      await c4.first().focus();
      await page.keyboard.press('Space');
      const again = page.getByRole('link', { name: /^Weigh: .+ \(C4, As found\)$/u });
      await again.waitFor();
      expect(await page.getByRole('radio', { name: 'Done 1' }).count()).toBe(1);

      await page.keyboard.press('Control+z');
      await again.waitFor({ state: 'detached' });
      expect(await c4.first().isChecked()).toBe(false);

      await c4.first().check();
      await again.waitFor();
      await page.reload();
      await page.getByRole('radio', { name: 'Done 1' }).waitFor();
      expect(await page.getByRole('checkbox').count()).toBe(jobs - 1);
      await page.getByRole('radio', { name: 'Done 1' }).check();
      await again.waitFor();
    });
  });

  it('ask for their weighing: the walk opens at that key and takes the address along once', async () => {
    await onWork(fresh, {}, async (page) => {
      await page.getByRole('radio', { name: 'Done 1' }).check();
      await page.getByRole('link', { name: /^Weigh: .+ \(C4, As found\)$/u }).click();
      await page.locator('.walk-note', { hasText: 'C4' }).waitFor();
      await expect.poll(() => new URL(page.url()).search).toBe('');
    });
  });

  it('that are not needed can be put back', async () => {
    await onWork(fresh, {}, async (page) => {
      const drop = page.getByRole('button', { name: /^Not needed: .*C5|^Not needed: .*G♯5/u }).first();
      const open = Number(/\d+/u.exec(await page.getByText(/^To do \d+$/u).innerText())?.[0]);
      await drop.click();
      await page.getByText(`To do ${String(open - 1)}`, { exact: true }).waitFor();
      await page.getByRole('radio', { name: 'Not needed 1' }).check();
      await page.getByRole('button', { name: /^Put back/u }).click();
      await page.getByText(`To do ${String(open)}`, { exact: true }).waitFor();
    });
  });
});

const stages = ['Friction', 'Ratio', 'Hammer', 'Lead', 'Other'];
function order(heading: string): number {
  return stages.findIndex((stage) => heading.startsWith(stage));
}

it('prints the bench sheet whole on A4 and on Letter, whatever the theme', async () => {
  await onWork(desk.demo, { colorScheme: 'dark' }, async (page) => {
    await page.emulateMedia({ media: 'print' });
    const paper = await page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
    expect(paper).toBe('rgb(255, 255, 255)');
    const jobs = await page.locator('.work-where').allInnerTexts();
    for (const format of ['A4', 'Letter'] as const) {
      const { pages, widthPt } = await readPdf(await page.pdf({ format }));
      // The sharp comes from another font than its letter, as a run of text of its own.
      const text = pages.join(' ').replace(/\s*♯\s*/gu, '♯');
      expect(Math.abs(widthPt - (format === 'A4' ? 595.28 : 612))).toBeLessThan(1);
      expect(pages.length).toBeLessThanOrEqual(4);
      expect(text.length).toBeGreaterThan(1000);
      expect(text).toContain('Bench sheet: Demo grand, invented');
      expect(jobs.filter((job) => !text.includes(job))).toEqual([]);
      expect(text).not.toContain('Print the bench sheet');
    }
  });
});

describe.each([{ colorScheme: 'light' }, { colorScheme: 'dark', viewport: { width: 390, height: 844 }, locale: 'de-DE' }] as const)('the work list, $colorScheme', (look) => {
  it('is accessible and keeps within the page', async () => {
    for (const piano of [desk.demo, fresh]) {
      await onWork(piano, look, async (page) => {
        await page.waitForLoadState('networkidle');
        await expectAccessible(page);
        await expectNoSidewaysScroll(page);
      });
    }
  });
});

it('complains of nothing on the console', () => {
  expect(desk.complaints).toEqual([]);
});
