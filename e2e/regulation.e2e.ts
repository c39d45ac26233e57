import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { type Desk, fileDesk } from './support/desk.ts';

const desk = fileDesk({ demo: true });

async function onView(view: 'Regulation' | 'Hammers', options: Parameters<Desk['open']>[1], look: (page: Page) => Promise<void>): Promise<void> {
  const page = await desk.open(`/pianos/${desk.demo}/action`, options);
  await page.locator('.action-page').waitFor();
  await page.getByRole('group', { name: 'What to look at' }).waitFor();
  await page.keyboard.press('Control+k');
  const palette = page.getByRole('dialog', { name: 'Commands' });
  await palette.waitFor();
  await page.keyboard.type(view === 'Regulation' ? 'Show the regulation' : 'Show hammers');
  await palette.getByRole('option', { name: view === 'Regulation' ? 'Show the regulation' : 'Show hammers, strike line and wear' }).waitFor();
  await page.keyboard.press('Enter');
  await palette.waitFor({ state: 'hidden' });
  await page.getByRole('heading', { name: view === 'Regulation' ? 'Regulation over the keyboard' : 'What is left of the hammers' }).waitFor();
  await look(page);
  await page.context().close();
}

describe('regulation and hammers by keyboard alone', () => {
  it('leads to the next key, says what to turn, and opens the aftertouch that blow, let-off and dip give', async () => {
    await onView('Regulation', {}, async (page) => {
      await page.keyboard.press('n');
      const panel = page.locator('.key-findings');
      await panel.getByRole('list', { name: 'What to turn, in this order' }).first().waitFor();
      await panel.getByRole('row', { name: /Aftertouch that blow/u }).getByRole('button').first().focus();
      await page.keyboard.press('Enter');
      const dialog = page.getByRole('dialog', { name: /Aftertouch that blow/u });
      await dialog.waitFor();
      expect(await dialog.innerText()).toMatch(/a_edge/u);
    });
  });

  it('states which of the three follows, and the sheet for the bench asks for it', async () => {
    await onView('Regulation', {}, async (page) => {
      await page.getByRole('button', { name: 'State or change' }).press('Enter');
      await page.getByLabel('Which of the three follows from the others').selectOption('dip');
      await page.getByRole('group', { name: 'Middle' }).getByLabel('Aftertouch (mm)').fill('1,2');
      await page.getByRole('button', { name: 'That holds' }).press('Enter');
      await page.getByText('The dip follows from blow and aftertouch.').waitFor();
      const href = (await page.getByRole('link', { name: 'Regulation sheet (CSV)' }).getAttribute('href')) ?? '';
      const csv = await page.evaluate(async (address) => (await fetch(address)).text(), href);
      expect(csv).toMatch(/aftertouchMm,middle,natural,1\.2,/u);
      expect(csv).toMatch(/dipMm,middle,sharp,[\d.]+,[\d.]+,yes/u);
    });
  });

  it('names the field and what is allowed where a figure cannot be', async () => {
    await onView('Regulation', {}, async (page) => {
      await page.getByRole('button', { name: 'State or change' }).press('Enter');
      await page.getByRole('group', { name: 'Treble' }).getByLabel('Blow (mm)').fill('450');
      await page.getByRole('button', { name: 'That holds' }).press('Enter');
      const field = page.getByRole('group', { name: 'Treble' }).getByLabel('Blow (mm)');
      expect(await field.getAttribute('aria-invalid')).toBe('true');
      expect(await page.locator('form').innerText()).toMatch(/450.*120|120.*450/su);
    });
  });

  it.each([[1024, 768], [390, 844]])('is whole and accessible at %d × %d', async (width, height) => {
    for (const view of ['Regulation', 'Hammers'] as const) {
      await onView(view, { viewport: { width, height } }, async (page) => {
        await page.keyboard.press('n');
        await expectAccessible(page);
        await expectNoSidewaysScroll(page);
      });
    }
  });
});
