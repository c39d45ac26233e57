import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectNoSidewaysScroll } from './support/accessible.ts';
import { type Desk, setUpDesk } from './support/desk.ts';

let desk: Desk;
beforeAll(async () => {
  desk = await setUpDesk();
});
afterAll(async () => {
  await desk.close();
});

describe('the shell', () => {
  it('opens on the pianos, and says on an empty bench what to measure first and why', async () => {
    const page = await desk.open('/');
    expect(new URL(page.url()).pathname).toBe('/pianos');
    await page.getByRole('heading', { name: 'No piano is taken in yet' }).waitFor();
    await page.getByText('weigh every key: the down weight').waitFor();
    await page.getByRole('button', { name: 'Saved. Show what is on its way' }).waitFor();
    await page.context().close();
  });

  it('finds a command by a few letters in the palette, by keyboard alone', async () => {
    const page = await desk.open('/pianos');
    await page.keyboard.press('Control+k');
    const palette = page.getByRole('dialog', { name: 'Commands' });
    await palette.waitFor();
    await page.keyboard.type('settings');
    await page.getByRole('option', { name: /Go to the settings/u }).waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Settings', level: 1 }).waitFor();
    await palette.waitFor({ state: 'detached' });
    await page.context().close();
  });

  it('gives the focus back where it was when the palette is closed with Esc', async () => {
    const page = await desk.open('/pianos');
    await page.getByRole('button', { name: 'Take a piano in' }).focus();
    await page.keyboard.press('Control+k');
    await page.getByRole('dialog', { name: 'Commands' }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Take a piano in');
    await page.context().close();
  });

  it('changes theme, contrast and language at once, and remembers them', async () => {
    const page = await desk.open('/settings', { colorScheme: 'light' });
    const paper = (): Promise<string> => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
    const light = await paper();
    await page.getByRole('radio', { name: 'Dark' }).check();
    expect(await paper()).not.toBe(light);
    await page.getByRole('radio', { name: 'High' }).check();
    expect(await paper()).toBe('rgb(0, 0, 0)');
    await page.getByRole('radio', { name: 'Deutsch' }).check();
    await page.getByRole('heading', { name: 'Einstellungen', level: 1 }).waitFor();
    await page.getByText('Zahlen erscheinen als 49,5 g').waitFor();
    await page.reload();
    await page.getByRole('heading', { name: 'Einstellungen', level: 1 }).waitFor();
    expect(await paper()).toBe('rgb(0, 0, 0)');
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('de');
    await page.context().close();
  });

  it('speaks German to a German browser from the first page on', async () => {
    const page = await desk.open('/', { locale: 'de-DE' });
    await page.getByRole('heading', { name: 'Instrumente', level: 1 }).waitFor();
    await page.context().close();
  });

  it('prints on white paper, whatever the theme', async () => {
    const page = await desk.open('/pianos', { colorScheme: 'dark' });
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    expect(await page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor)).toBe('rgb(255, 255, 255)');
    expect(await page.locator('.top').isVisible()).toBe(false);
    await page.context().close();
  });

  it('says where a mistyped address leads, and does not scroll sideways on a telephone', async () => {
    const page = await desk.open('/no/such/page', { viewport: { width: 390, height: 844 } });
    await page.getByRole('heading', { name: 'There is no such page' }).waitFor();
    await expectNoSidewaysScroll(page);
    await page.context().close();
  });

  it('complains of nothing on the console', () => {
    expect(desk.complaints).toEqual([]);
  });
});
