import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { fileDesk } from './support/desk.ts';

let upright = '';

/** Twelve keys of an invented upright: the same parts, springs that fall short on the last four. */
const desk = fileDesk({}, async () => {
  upright = (await desk.call<{ id: string }>('POST', '/api/pianos', { name: 'Invented upright', kind: 'upright', firstMidi: 21, lastMidi: 108 })).id;
  await desk.call('PUT', `/api/pianos/${upright}/actions/1`, { buttMm: 20, tiltDeg: 12, lossMm: 0.3 });
  await desk.call('PUT', `/api/pianos/${upright}/intents/1`, { even: 'downWeight', targetG: 52, toleranceG: 3, upWeightMinG: 20 });
  const lengths = { keyFrontMm: 225, keyBackMm: 99, wippenHeelMm: 60, wippenJackMm: 90, hammerMm: 142.9, keyFrontLengthMm: 238 };
  const ofColours = [0, 1].flatMap((index) => Object.entries(lengths).map(([quantity, value]) => ({ quantity, scope: 'colour', index, typed: String(value) })));
  const ofKeys = Array.from({ length: 12 }, (_, at) => {
    const weights = { springTorqueGMm: at < 8 ? 110 : 60, damperG: 24, hammerWeightG: 7, wippenWeightG: 34, frontWeightG: 4, downWeightG: 50, upWeightG: 26 };
    return Object.entries(weights).map(([quantity, value]) => ({ quantity, scope: 'key', index: 31 + at, typed: String(value) }));
  }).flat();
  await desk.call('POST', `/api/pianos/${upright}/readings`, { cycle: 1, state: 'found', entries: [...ofColours, ...ofKeys] });
});

async function onUpright(options: BrowserContextOptions, look: (page: Page) => Promise<void>): Promise<void> {
  const page = await desk.open(`/pianos/${upright}/action`, options);
  await page.locator('.action-page').waitFor();
  await page.locator('.action-page .choice-row').first().getByRole('radio', { name: /^(?:Spring and damper|Feder und Dämpfer)$/u }).focus();
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: /as planned$|als geplant/u }).waitFor();
  await look(page);
  await page.context().close();
}

const planned = async (): Promise<number> => (await desk.call<{ readings: { state: string }[] }>('GET', `/api/pianos/${upright}/readings`)).readings.filter(({ state }) => state === 'planned').length;

it('keeps springs and front weights as planned in one step, by keys alone, and takes the step back', async () => {
  await onUpright({}, async (page) => {
    await page.getByRole('button', { name: /^Take \d+ keys as planned$/u }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(planned).toBeGreaterThanOrEqual(24);
    await page.getByText(/^Planned figures of \d+ keys noted/u).first().waitFor();
    await page.locator('body').click({ position: { x: 2, y: 2 } });
    await page.keyboard.press('Control+z');
    await expect.poll(planned).toBe(0);
  });
});

const looks = [
  { colorScheme: 'dark', viewport: { width: 1024, height: 768 }, hasTouch: true },
  { colorScheme: 'light', viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, locale: 'de-DE' },
] as const;

describe.each(looks)('spring and damper, $colorScheme, $viewport.width wide', (look) => {
  it('is accessible and keeps within the page', async () => {
    await onUpright(look, async (page) => {
      await expectAccessible(page);
      await expectNoSidewaysScroll(page);
    });
  });
});

it('complains of nothing on the console', () => {
  expect(desk.complaints).toEqual([]);
});
