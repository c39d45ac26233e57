import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { fileDesk } from './support/desk.ts';

const desk = fileDesk({ demo: true });
const WORKED_OUT = { timeout: 300_000 };
const PATIENCE_MS = 900_000;

const looks = [
  ['light, English, 1024 wide', { colorScheme: 'light', viewport: { width: 1024, height: 768 }, locale: 'en-GB' }],
  ['dark, German, 390 wide, by touch', { colorScheme: 'dark', viewport: { width: 390, height: 844 }, locale: 'de-DE', hasTouch: true, isMobile: true }],
] as const;

const words = {
  'en-GB': { tuning: 'Tuning', voicing: 'Voicing', sustain: 'Sustain', compass: 'Compass', recordings: 'Recordings', found: 'As found' },
  'de-DE': { tuning: 'Stimmung', voicing: 'Intonation', sustain: 'Ausklingen', compass: 'Umfang', recordings: 'Aufnahmen', found: 'Vorgefunden' },
} as const;

const choose = (page: Page, name: string, isTouch = false) => {
  const choice = page.locator('label').filter({ hasText: name }).first();
  return isTouch ? choice.tap(WORKED_OUT) : choice.click(WORKED_OUT);
};

/** Buttons and fields smaller than a finger may press, by their text; a figure within a line or a cell of a table may be. */
const tooSmall = (page: Page) => page.evaluate(() => [...document.querySelectorAll<HTMLElement>('main button:not(.figure), main select, main summary')]
  .filter((one) => one.offsetParent !== null && (one.getBoundingClientRect().height < 24 || one.getBoundingClientRect().width < 24)).map((one) => one.textContent));

describe.each(looks)('every view of the sound, %s', (_, look) => {
  const said = words[look.locale];
  const isTouch = 'hasTouch' in look;

  it('is accessible, keeps within the page, and has nothing too small to press', async () => {
    const page = await desk.open(`/pianos/${desk.demo}/tone`, look);
    for (const view of ['recordings', 'compass', 'voicing', 'sustain', 'tuning'] as const) {
      await choose(page, said[view], isTouch);
      await page.locator('.loading').waitFor({ state: 'detached' }).catch(() => undefined);
      await page.waitForLoadState('networkidle');
      if (view === 'compass') await page.getByText(/still being worked out|noch ausgewertet/u).waitFor({ state: 'detached', ...WORKED_OUT });
      await expectAccessible(page);
      await expectNoSidewaysScroll(page);
      expect(await tooSmall(page), view).toEqual([]);
    }
    await page.context().close();
  }, PATIENCE_MS);
});

describe('the voicing map', () => {
  it('names bright and dull hammers beyond what striking again explains, and opens each to its calculation, by keyboard alone', async () => {
    const page = await desk.open(`/pianos/${desk.demo}/tone`);
    await page.getByRole('radio', { name: 'Voicing' }).focus();
    await page.keyboard.press('Space');
    await page.getByText('still being worked out').waitFor({ state: 'detached', ...WORKED_OUT });
    await page.getByRole('radio', { name: 'As found' }).focus(WORKED_OUT);
    await page.keyboard.press('Space');
    const row = page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: 'F♯4' }) });
    await row.getByText('bright').waitFor(WORKED_OUT);
    await row.getByRole('button').nth(2).focus();
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog');
    await dialog.getByText('wrestplank calc voicing-map --json').waitFor();
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    await row.getByRole('button', { name: 'F♯4' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('region', { name: /F♯4, key 46/u }).getByText('too few strikes').first().waitFor();
    await page.getByRole('button', { name: 'Key below' }).focus();
    for (let step = 46; step > 40; step -= 1) await page.keyboard.press('Enter');
    const panel = page.getByRole('region', { name: /C4, key 40/u });
    await panel.getByRole('img', { name: /^From soft to loud/u }).waitFor();
    await panel.getByRole('row').filter({ hasText: 'Brighter for 10 dB' }).getByRole('button').first().press('Enter');
    await dialog.getByText('wrestplank calc soft-to-loud --json').waitFor();
    await page.keyboard.press('Escape');
    await page.context().close();
  }, PATIENCE_MS);

  it('hands its plot out as a drawing, a picture and a table', async () => {
    const page = await desk.open(`/pianos/${desk.demo}/tone`);
    await choose(page, 'Voicing');
    for (const format of ['SVG', 'PNG', 'CSV']) {
      const [download] = await Promise.all([page.waitForEvent('download', WORKED_OUT), page.getByRole('button', { name: new RegExp(`^Brightness at .* as ${format}$`, 'u') }).click(WORKED_OUT)]);
      const bytes = Buffer.concat(await download.createReadStream().then((stream) => stream.toArray()) as Buffer[]);
      if (format === 'CSV') expect(bytes.toString('utf8')).toMatch(/^key,note,state,levelDb,brightness,uncertainty,curve,offset,beyond,voice,basis\r\n10,F♯1,finished,-\d+\.\d{6,},/u);
      else expect(bytes.subarray(0, 4).toString('latin1')).toBe(format === 'SVG' ? '<svg' : '\u0089PNG');
    }
    await page.context().close();
  }, PATIENCE_MS);
});

describe('the sustain map', () => {
  it('asks for the bearing where notes ring short, beside the bearing and the air as read, and opens to its calculation', async () => {
    const page = await desk.open(`/pianos/${desk.demo}/tone`);
    await choose(page, 'Sustain');
    await page.getByText('still being worked out').waitFor({ state: 'detached', ...WORKED_OUT });
    await choose(page, 'As found');
    const list = page.getByRole('region', { name: 'Where it rings short' });
    await list.getByText('Lost bearing or loose bridge here?').waitFor(WORKED_OUT);
    await list.getByText('down bearing, which is low there').waitFor();
    await page.getByRole('img', { name: /^Total angle/u }).waitFor();
    await page.getByText('68').first().waitFor();
    await list.locator('button.figure').click();
    await page.getByRole('dialog').getByText('wrestplank calc sustain-map --json').waitFor();
    await page.keyboard.press('Escape');
    await page.context().close();
  }, PATIENCE_MS);
});

describe('the tuning', () => {
  it('lays the curve over the strings, shows where a key is to be, and opens it, by keyboard alone', async () => {
    const page = await desk.open(`/pianos/${desk.demo}/tone`);
    await page.getByRole('radio', { name: 'Tuning' }).focus();
    await page.keyboard.press('Space');
    await page.getByRole('img', { name: /^Pitch/u }).waitFor(WORKED_OUT);
    await page.keyboard.press('k');
    await page.getByRole('dialog').getByRole('textbox').fill('49');
    await page.keyboard.press('Enter');
    const panel = page.getByRole('region', { name: /A4, key 49/u });
    await panel.getByRole('button', { name: /440/u }).first().press('Enter');
    await page.getByRole('dialog').getByText('wrestplank calc tuning-curve --json').waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await panel.getByRole('button', { name: 'Key above' }).press('Enter');
    await page.getByRole('region', { name: /A♯4, key 50/u }).waitFor();
    await page.context().close();
  }, PATIENCE_MS);
});

it('complains of nothing on the console', () => {
  expect(desk.complaints).toEqual([]);
});
