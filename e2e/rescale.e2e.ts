import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { type Desk, fileDesk } from './support/desk.ts';

const desk = fileDesk({ demo: true });

const RECKONED = { timeout: 180_000 };

async function onRescale(options: Parameters<Desk['open']>[1], look: (page: Page) => Promise<void>): Promise<void> {
  const page = await desk.open(`/pianos/${desk.demo}/strings`, options);
  await page.locator('.strings-page').waitFor();
  await page.getByRole('radio', { name: 'Rescale', exact: true }).focus();
  await page.keyboard.press('Space');
  await page.locator('.rescale-form').waitFor();
  await look(page);
  await page.context().close();
}

const plannedReadings = async (): Promise<readonly string[]> => {
  const { readings } = await desk.call<{ readings: { index: number; quantity: string; typed: string | null; state: string }[] }>('GET', `/api/pianos/${desk.demo}/readings?cycle=1`);
  return readings.filter(({ state }) => state === 'planned').map(({ index, quantity, typed }) => `${String(index)} ${quantity} ${String(typed)}`).sort();
};

describe('rescaling', () => {
  it('reckons a plan, says how good it is, keeps it as planned in one step, and undoes it in one', async () => {
    await onRescale({}, async (page) => {
      const before = await plannedReadings();
      await page.getByRole('button', { name: 'Rescale', exact: true }).focus();
      await page.keyboard.press('Enter');
      await page.getByRole('heading', { name: 'Result' }).waitFor(RECKONED);
      const said = await page.locator('section[aria-labelledby=rescale-result]').innerText();
      expect(said).toMatch(/Proven|Not proven/u);
      expect(said).toMatch(/lower bound 0\.\d+/u);
      expect(said).toMatch(/pull \d+\.\d+ kN/u);
      expect(await plannedReadings()).toEqual(before);
      await page.getByRole('button', { name: /Keep as planned/u }).first().focus();
      await page.keyboard.press('Enter');
      await expect.poll(plannedReadings).not.toEqual(before);
      await page.keyboard.press('Control+z');
      await expect.poll(plannedReadings).toEqual(before);
    });
  }, 240_000);

  it('refuses limits that cannot be met: which, where, and by how much', async () => {
    await onRescale({}, async (page) => {
      await page.getByLabel('Greatest share of breaking (%)').fill('31');
      await page.getByRole('button', { name: 'Rescale', exact: true }).click();
      const refusal = page.getByRole('alert').filter({ hasText: 'These limits cannot be met' });
      await refusal.waitFor(RECKONED);
      expect(await refusal.innerText()).toMatch(/Greatest share of breaking 31\.0 %.*points away\. .*C8/su);
      await page.getByLabel('Greatest share of breaking (%)').fill('much');
      await page.getByRole('button', { name: 'Rescale', exact: true }).click();
      await page.getByText('One field needs another look').waitFor();
    });
  }, 240_000);

  it('draws the trade-off, is chosen from with arrow keys, and holds two plans against what was found', async () => {
    await onRescale({}, async (page) => {
      await page.getByRole('button', { name: /Draw the trade-off/u }).click();
      await page.getByRole('heading', { name: 'Even tension against even inharmonicity' }).waitFor(RECKONED);
      await page.getByRole('progressbar').waitFor({ state: 'detached', ...RECKONED });
      const point = page.getByRole('group', { name: 'Point of the trade-off' });
      expect(await point.getByRole('radio').count()).toBe(9);
      await point.getByRole('radio').nth(0).check();
      await page.getByRole('button', { name: 'Keep to compare' }).click();
      await point.getByRole('radio').nth(0).focus();
      for (let strokes = 0; strokes < 8; strokes += 1) await page.keyboard.press('ArrowRight');
      expect(await point.getByRole('radio').nth(8).isChecked()).toBe(true);
      await page.getByRole('button', { name: 'Keep to compare' }).click();
      const table = page.getByRole('table').filter({ hasText: 'Bends of tension' });
      expect(await table.getByRole('columnheader').allInnerTexts()).toEqual(['Figure', 'As found', 'Kept plan A', 'Kept plan B']);
      const bends = async (row: string): Promise<readonly number[]> => (await table.getByRole('row').filter({ hasText: row }).locator('td').allInnerTexts()).map(Number.parseFloat);
      const [, evenTension = 0, evenB = 0] = await bends('Bends of inharmonicity');
      expect(evenB).toBeLessThan(evenTension);
      await expectAccessible(page);
    });
  }, 240_000);

  it('stops when told, with the best so far or none', async () => {
    await onRescale({}, async (page) => {
      await page.getByRole('button', { name: /Draw the trade-off/u }).click();
      await page.getByRole('button', { name: 'Stop, and take the best so far' }).click();
      await page.getByRole('progressbar').waitFor({ state: 'detached' });
      expect(await page.getByRole('button', { name: 'Rescale', exact: true }).isEnabled()).toBe(true);
    });
  }, 60_000);

  it('designs a wound string for one note, to be tried on it', async () => {
    const page = await desk.open(`/pianos/${desk.demo}/strings`);
    await page.locator('.strings-page').waitFor();
    await page.keyboard.press('k');
    await page.getByRole('dialog', { name: 'Choose a key' }).waitFor();
    await page.keyboard.type('E1');
    await page.keyboard.press('Enter');
    await page.getByText('Design a wound string').click();
    await page.getByRole('button', { name: 'Name windings' }).click();
    const rows = page.getByRole('table', { name: 'Design a wound string' }).locator('tbody tr');
    await rows.first().waitFor();
    const off = (await rows.locator('td:nth-of-type(4)').allInnerTexts()).map((text) => Math.abs(Number.parseFloat(text.replace('−', '-'))));
    expect(off).toEqual([...off].sort((a, b) => a - b));
    await rows.first().getByRole('button').click();
    await page.getByText('Tried on this note').waitFor();
    expect(await page.getByRole('button', { name: 'Keep as planned (1 note)' }).isEnabled()).toBe(true);
    await page.context().close();
  });

  it.each([[1024, 768, 'light'], [390, 844, 'dark']] as const)('is accessible and fits %i × %i, %s', async (width, height, colorScheme) => {
    await onRescale({ viewport: { width, height }, colorScheme }, async (page) => {
      await expectAccessible(page);
      await expectNoSidewaysScroll(page);
    });
  });

  it('complained of nothing', () => {
    expect(desk.complaints).toEqual([]);
  });
});
