import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { type Desk, fileDesk } from './support/desk.ts';

const desk = fileDesk({ demo: true });

/** Opens the plan, looks at it once it stands, and closes it. */
async function onPlan(options: Parameters<Desk['open']>[1], look: (page: Page) => Promise<void>): Promise<void> {
  const page = await desk.open(`/pianos/${desk.demo}/action`, options);
  await page.locator('.action-page').waitFor();
  await page.locator('.action-page .choice-row').first().getByRole('radio', { name: 'Plan', exact: true }).focus();
  await page.keyboard.press('Space');
  await page.locator('.key-panel').waitFor();
  await look(page);
  await page.context().close();
}

const numberIn = (text: string): number => Number(text.replace('−', '-').replace(/[^\d.-]/gu, ''));

it('moves every consequence with a step of the roller, opens how it was made, and keeps the plan as one step', async () => {
  await onPlan({}, async (page) => {
    const row = (name: string) => page.locator('.key-panel tr', { hasText: name }).locator('td');
    const before = numberIn(await row('Front weight needed').nth(2).innerText());
    await page.getByRole('textbox', { name: 'Roller moved away from the hammer centre' }).fill('1');
    await expect.poll(async () => numberIn(await row('Front weight needed').nth(2).innerText())).toBeLessThan(before - 2);
    // 17 mm to 18 mm: the ratio goes as one over the arm.
    const [now, then] = [numberIn(await row('Ratio by distance').nth(1).innerText()), numberIn(await row('Ratio by distance').nth(2).innerText())];
    expect(then / now).toBeCloseTo(17 / 18, 2);
    await row('Front weight needed').nth(2).getByRole('button').click();
    const dialog = page.getByRole('dialog');
    await dialog.getByText('FW = R·SW + K·WW − S − BW').waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('textbox', { name: 'Hammers heavier by per cent' }).fill('90');
    await expect.poll(() => page.getByRole('textbox', { name: 'Hammers heavier by per cent' }).getAttribute('aria-invalid')).toBe('true');
    await page.keyboard.press('Control+a');
    await page.keyboard.press('Delete');
    await page.getByRole('button', { name: 'State these as planned' }).click();
    await page.getByRole('button', { name: 'State these as planned' }).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Keep 88 keys as planned' }).click();
    const planned = async (): Promise<number> => (await desk.call<{ readings: { state: string; quantity: string }[] }>('GET', `/api/pianos/${desk.demo}/readings`)).readings.filter(({ state, quantity }) => state === 'planned' && quantity === 'frontWeightG').length;
    await expect.poll(planned).toBe(88);
    await page.locator('body').click({ position: { x: 2, y: 2 } });
    await page.keyboard.press('Control+z');
    await expect.poll(planned).toBe(0);
  });
});

const looks = [
  { colorScheme: 'dark', viewport: { width: 1024, height: 768 }, hasTouch: true },
  { colorScheme: 'light', viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, locale: 'de-DE' },
] as const;

describe.each(looks)('the plan, $colorScheme, $viewport.width wide', (look) => {
  it('is accessible and keeps within the page, its form too', async () => {
    await onPlan(look, async (page) => {
      await expectAccessible(page);
      await expectNoSidewaysScroll(page);
      await page.locator('.terms-line button').first().click();
      await page.locator('form.panel').waitFor();
      await expectAccessible(page);
      await expectNoSidewaysScroll(page);
    });
  });
});

it('complains of nothing on the console', () => {
  expect(desk.complaints).toEqual([]);
});
