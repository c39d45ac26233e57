import { describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { fileDesk } from './support/desk.ts';

const desk = fileDesk();

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

  it('keeps who is at the bench on this device, and lets what is written carry the name', async () => {
    const { id } = await desk.call<{ id: string }>('POST', '/api/pianos', { name: 'Signed grand', kind: 'grand' });
    const page = await desk.open('/settings');
    await page.getByLabel('Somebody new').fill('Ada Tester');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.getByLabel('Who is at the bench').locator('option:checked').textContent()).toBe('Ada Tester');
    await expectAccessible(page);
    await page.goto(`${desk.bench.url}/pianos/${id}/story`);
    await page.getByRole('button', { name: 'Back in the shop' }).click();
    await page.getByRole('button', { name: 'Open stay 2' }).click();
    await page.getByText(/· Ada Tester/u).waitFor();
    await page.goto(`${desk.bench.url}/settings`);
    await page.getByRole('button', { name: 'Forget this name' }).click();
    await page.getByRole('button', { name: 'Forget Ada Tester' }).click();
    await expect.poll(() => page.getByLabel('Who is at the bench').locator('option:checked').textContent()).toBe('Nobody named');
    await page.goto(`${desk.bench.url}/pianos/${id}/story`);
    await page.getByText(/· name forgotten/u).waitFor();
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
