import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { fileDesk } from './support/desk.ts';

const desk = fileDesk({ demo: true });

const addresses = ['/pianos', '/bench', '/people', '/parts', '/settings', ...['story', 'readings', 'action', 'tone', 'work', 'worth', 'proof'].map((page) => `/pianos/:id/${page}`)];
const looks = [
  { colorScheme: 'light', viewport: { width: 1280, height: 900 } },
  { colorScheme: 'dark', viewport: { width: 1024, height: 768 } },
  { colorScheme: 'light', viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
  { colorScheme: 'dark', viewport: { width: 390, height: 844 }, locale: 'de-DE' },
] as const;

describe.each(looks)('every page, $colorScheme, $viewport.width wide', (look) => {
  it.each(addresses)('%s is accessible and does not scroll sideways', async (address) => {
    const page = await desk.open(address.replace(':id', desk.demo), look);
    await page.waitForLoadState('networkidle');
    await expectAccessible(page);
    await expectNoSidewaysScroll(page);
    await page.context().close();
  });
});

describe('what opens over a page', () => {
  it.each(['light', 'dark'] as const)('palette, card and shortcuts are accessible, %s', async (colorScheme) => {
    const page = await desk.open(`/pianos/${desk.demo}/story`, { colorScheme });
    await page.keyboard.press('Control+k');
    await page.getByRole('dialog', { name: 'Commands' }).waitFor();
    await expectAccessible(page);
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Change the card' }).click();
    await page.getByRole('dialog', { name: 'Change the card' }).waitFor();
    await expectAccessible(page);
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await page.keyboard.press('?');
    await page.getByRole('dialog', { name: 'Keyboard shortcuts' }).waitFor();
    await expectAccessible(page);
    await page.context().close();
  });
});

it('complains of nothing on the console', () => {
  expect(desk.complaints).toEqual([]);
});

it('stands on no more than 250 kB of packed script, and says all it has to before the other words have come', async () => {
  const context = await desk.browser.newContext();
  const page = await context.newPage();
  const bodies: Promise<Buffer>[] = [];
  page.on('response', (response) => {
    if (/\.js$/u.test(new URL(response.url()).pathname)) bodies.push(response.body());
  });
  let letThrough: () => void = () => undefined;
  const held = new Promise<void>((resolve) => { letThrough = resolve; });
  await page.route(/\/catalogue\.en-[^/]+\.js$/u, async (route) => {
    await held;
    await route.continue();
  });
  const asked = page.waitForRequest(/\/catalogue\.en-/u);
  await page.goto(desk.bench.url);
  await page.locator('main h1').waitFor();
  const packed = (await Promise.all(bodies)).reduce((sum, body) => sum + gzipSync(body).length, 0);
  expect(packed).toBeGreaterThan(50_000);
  expect(packed).toBeLessThan(250_000);
  await page.getByText(/Demo/u).first().waitFor();
  const first = await page.locator('body').ariaSnapshot();
  const request = await asked;
  letThrough();
  await (await request.response())?.finished();
  await page.evaluate(() => new Promise((settled) => { requestAnimationFrame(() => setTimeout(settled)); }));
  expect(await page.locator('body').ariaSnapshot()).toBe(first);
  await context.close();
});
