import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { type Desk, fileDesk } from './support/desk.ts';

const desk = fileDesk({ demo: true });

async function onPage(address: string, options: Parameters<Desk['open']>[1], look: (page: Page) => Promise<void>): Promise<void> {
  const page = await desk.open(address, options);
  await page.locator('.strings-page').waitFor();
  await look(page);
  await page.context().close();
}

/** The figure in a row of the note's table, for a state's column. */
const figureAt = (page: Page, row: string, column: number): Promise<string> =>
  page.locator('.note-panel .figures-table').filter({ hasText: 'Impedance' }).getByRole('row').filter({ hasText: row }).locator('td').nth(column).innerText();

const plannedReadings = async (): Promise<readonly { readonly index: number; readonly quantity: string; readonly typed: string | null }[]> => {
  const { readings } = await desk.call<{ readings: { index: number; quantity: string; typed: string | null; state: string }[] }>('GET', `/api/pianos/${desk.demo}/readings?cycle=1`);
  return readings.filter(({ state }) => state === 'planned');
};

async function chooseNote(page: Page, note: string): Promise<void> {
  await page.keyboard.press('k');
  await page.getByRole('dialog', { name: 'Choose a key' }).waitFor();
  await page.keyboard.type(note);
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
}

/** Tabs until an element has the focus. */
async function tabTo(page: Page, name: string): Promise<void> {
  for (let strokes = 0; strokes < 80; strokes += 1) {
    if ((await page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '')).includes(name)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never reached ${name}`);
}

describe('the strings by keyboard alone', () => {
  it('says of an understressed plain note that a wire size is no cure, with the figures that show it', async () => {
    await onPage(`/pianos/${desk.demo}/strings`, {}, async (page) => {
      await page.keyboard.press('n');
      const panel = page.getByRole('region', { name: 'B2, key 27' });
      await panel.waitFor();
      expect(await panel.innerText()).toMatch(/points below what is asked/u);
      expect(await panel.locator('.note-warn').innerText()).toMatch(/Another gauge is no cure.*another length, a wound string or another pitch/su);
      const shares = (await panel.locator('.note-warn tbody td:first-of-type').allInnerTexts()).map((text) => Number.parseFloat(text));
      expect(shares).toHaveLength(3);
      expect(Math.max(...shares) - Math.min(...shares)).toBeLessThan(0.6);
    });
  });

  it('steps a wire up, sees tension move and breaking hardly, keeps it as planned, and undoes it in one step', async () => {
    await onPage(`/pianos/${desk.demo}/strings`, {}, async (page) => {
      await chooseNote(page, 'C5');
      const before = await plannedReadings();
      const [tension, share] = [await figureAt(page, 'Tension', 1), await figureAt(page, 'Share of the breaking load', 1)];
      await tabTo(page, 'next stouter size');
      await page.keyboard.press('Enter');
      await expect.poll(() => figureAt(page, 'Tension', 1)).not.toBe(tension);
      expect(Math.abs(Number.parseFloat(await figureAt(page, 'Share of the breaking load', 1)) - Number.parseFloat(share))).toBeLessThan(0.6);
      expect(await plannedReadings()).toEqual(before);
      await tabTo(page, 'Keep as planned');
      await page.keyboard.press('Enter');
      await expect.poll(plannedReadings).not.toEqual(before);
      await page.keyboard.press('Control+z');
      await expect.poll(async () => (await plannedReadings()).map(({ index, quantity, typed }) => `${String(index)} ${quantity} ${String(typed)}`).sort()).toEqual(before.map(({ index, quantity, typed }) => `${String(index)} ${quantity} ${String(typed)}`).sort());
    });
  });

  it('keeps sizes tried through a reload, and says what is wrong with one that cannot be', async () => {
    await onPage(`/pianos/${desk.demo}/strings`, {}, async (page) => {
      await chooseNote(page, 'C5');
      const wire = page.getByLabel('Wire (mm)', { exact: true });
      await wire.focus();
      await page.keyboard.press('Control+a');
      await page.keyboard.type('9');
      await page.getByText(/9 is outside what is allowed|outside what is allowed/u).first().waitFor();
      expect(await page.getByRole('button', { name: /Keep as planned/u }).isDisabled()).toBe(true);
      await page.keyboard.press('Control+a');
      await page.keyboard.type('0.95');
      await page.reload();
      await page.locator('.strings-page').waitFor();
      await chooseNote(page, 'C5');
      expect(await page.getByLabel('Wire (mm)', { exact: true }).inputValue()).toBe('0.95');
      await page.getByRole('button', { name: 'Give up everything tried' }).click();
      expect(await page.getByLabel('Wire (mm)', { exact: true }).inputValue()).not.toBe('0.95');
    });
  });

  it('opens tension to its formula, the reading it came from and its source', async () => {
    await onPage(`/pianos/${desk.demo}/strings`, {}, async (page) => {
      await chooseNote(page, 'A4');
      await page.locator('.note-panel').getByRole('row').filter({ hasText: 'Tension' }).last().getByRole('button').first().click();
      const dialog = page.getByRole('dialog', { name: 'Tension, A4' });
      await dialog.waitFor();
      expect(await dialog.getByText('T = 4·μ·L²·f²').count()).toBe(1);
      expect(await dialog.innerText()).toMatch(/calc plain-string/u);
    });
  });

  it('takes a wire typed into the grid, with tension, share and inharmonicity beside it', async () => {
    await onPage(`/pianos/${desk.demo}/strings`, {}, async (page) => {
      await page.keyboard.press('v');
      const grid = page.getByRole('grid');
      await grid.waitFor();
      const row = grid.locator('tr[data-row="50"]');
      const derived = row.locator('.cell-derived');
      const before = await derived.first().innerText();
      await row.locator('[data-column="2"]').click();
      await page.keyboard.type('1.1');
      await page.keyboard.press('Enter');
      await expect.poll(() => derived.first().innerText()).not.toBe(before);
      await page.getByRole('button', { name: /^Saved/u }).waitFor();
      await page.keyboard.press('Control+z');
      await expect.poll(() => derived.first().innerText()).toBe(before);
    });
  });

  it('states what is asked, and judges by nothing once it is taken back', async () => {
    await onPage(`/pianos/${desk.demo}/strings`, {}, async (page) => {
      await page.getByRole('button', { name: 'State or change' }).click();
      await page.getByLabel('Greatest share of the breaking load (%)').fill('20');
      await page.getByRole('button', { name: 'That holds' }).click();
      await page.getByText('One field needs another look').waitFor();
      await page.getByLabel('Greatest share of the breaking load (%)').fill('62');
      await page.getByRole('button', { name: 'That holds' }).click();
      await page.getByText('Asked: 30 % to 62 % of breaking').waitFor();
      await page.locator('.sign-legend').getByText('above what is asked').first().waitFor();
      await page.keyboard.press('Control+z');
      await page.getByText('Asked: 30 % to 65 % of breaking').waitFor();
    });
  });
});

describe('the strings page', () => {
  it('says what to measure first where nothing is, and why', async () => {
    const { id } = await desk.call<{ id: string }>('POST', '/api/pianos', { name: 'Bare grand', kind: 'grand' });
    await onPage(`/pianos/${id}/strings`, {}, async (page) => {
      await page.getByRole('heading', { name: 'No string has been measured yet' }).waitFor();
      await expectAccessible(page);
      await page.getByRole('button', { name: 'Take down lengths and wires' }).click();
      await page.getByRole('grid').waitFor();
    });
  });

  it.each([[1024, 768, 'light'], [390, 844, 'dark']] as const)('is accessible and fits %i × %i, %s', async (width, height, colorScheme) => {
    await onPage(`/pianos/${desk.demo}/strings`, { viewport: { width, height }, colorScheme }, async (page) => {
      await chooseNote(page, 'C3');
      await expectAccessible(page);
      await expectNoSidewaysScroll(page);
      await page.keyboard.press('v');
      await page.getByRole('grid').waitFor();
      await expectAccessible(page);
      await expectNoSidewaysScroll(page);
    });
  });

  it('complained of nothing', () => {
    expect(desk.complaints).toEqual([]);
  });
});
