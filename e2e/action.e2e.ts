import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { type Desk, fileDesk } from './support/desk.ts';

const desk = fileDesk({ demo: true });

/** Opens a page, looks at it once it stands, and closes it. */
async function onPage(address: string, options: Parameters<Desk['open']>[1], look: (page: Page) => Promise<void>): Promise<void> {
  const page = await desk.open(address, options);
  await page.locator('.action-page').waitFor();
  await look(page);
  await page.context().close();
}

const focused = (page: Page): Promise<string> => page.evaluate(() => document.activeElement?.textContent ?? '');

describe('the action by keyboard alone', () => {
  it('chooses a key, reads what is wrong, opens a figure, and comes back to it with Esc', async () => {
    await onPage(`/pianos/${desk.demo}/action`, {}, async (page) => {
      const keys = page.getByRole('slider', { name: 'Keys, marked by finding' });
      for (let strokes = 0; strokes < 60 && !(await keys.evaluate((element) => element === document.activeElement)); strokes += 1) await page.keyboard.press('Tab');
      for (const stroke of ['End', 'PageDown', 'PageDown', 'ArrowLeft', 'ArrowLeft', 'ArrowLeft', 'ArrowLeft', 'ArrowLeft', 'ArrowLeft']) await page.keyboard.press(stroke);
      expect(await keys.getAttribute('aria-valuetext')).toMatch(/^F♯5/u);
      const panel = page.getByRole('region', { name: 'F♯5, key 58' });
      expect(await panel.getByRole('listitem').filter({ hasText: 'Action ratio too high' }).first().innerText()).toMatch(/\+\d\.\d\s?g ± \d\.\d\s?g from the weighed parts/u);
      await page.keyboard.press('Tab');
      const share = panel.locator('.split-table').getByRole('button').first();
      for (let strokes = 0; strokes < 40 && !(await share.evaluate((element) => element === document.activeElement)); strokes += 1) await page.keyboard.press('Tab');
      const told = await focused(page);
      await page.keyboard.press('Enter');
      const dialog = page.getByRole('dialog', { name: 'Ratio, F♯5' });
      await dialog.waitFor();
      expect(await dialog.getByText('d_R = ½(SW + SW*)·(R − R*)').count()).toBe(1);
      await page.keyboard.press('Escape');
      await dialog.waitFor({ state: 'detached' });
      await expect.poll(() => focused(page)).toBe(told);
    });
  });

  it('walks the keys with a finding, chooses one by note, and shows another state, by commands', async () => {
    await onPage(`/pianos/${desk.demo}/action`, {}, async (page) => {
      await page.keyboard.press('n');
      const first = await page.locator('.key-panel h2').innerText();
      await page.keyboard.press('n');
      await expect.poll(() => page.locator('.key-panel h2').innerText()).not.toBe(first);
      await page.keyboard.press('Shift+N');
      await expect.poll(() => page.locator('.key-panel h2').innerText()).toBe(first);
      await page.keyboard.press('k');
      await page.getByRole('dialog', { name: 'Choose a key' }).waitFor();
      await page.keyboard.type('Q9');
      await page.keyboard.press('Enter');
      await page.getByText('“Q9” is no key of this piano').waitFor();
      await page.keyboard.press('Control+a');
      await page.keyboard.type('C4');
      await page.keyboard.press('Enter');
      await page.getByRole('region', { name: 'C4, key 40' }).waitFor();
      await page.keyboard.press('Control+k');
      await page.getByRole('dialog', { name: 'Commands' }).waitFor();
      await page.keyboard.type('as finished');
      await page.keyboard.press('Enter');
      await page.locator('.summary-state[aria-pressed=true]', { hasText: 'As finished' }).waitFor();
    });
  });
});

describe('the figures of the key', () => {
  it('add up to the sum shown beneath them, and open to the same figures', async () => {
    await onPage(`/pianos/${desk.demo}/action`, {}, async (page) => {
      for (const note of ['F1', 'F♯5', 'A7', 'G♯4']) {
        await page.keyboard.press('k');
        await page.getByRole('dialog', { name: 'Choose a key' }).waitFor();
        await page.keyboard.insertText(note);
        await page.keyboard.press('Enter');
        await page.getByRole('region', { name: new RegExp(`^${note}, key`, 'u') }).waitFor();
        const shown = (await page.locator('.split-table tbody .figure').allInnerTexts()).map((text) => Number(text.replace('−', '-').replace(/\s?g/u, '')));
        expect(shown).toHaveLength(6);
        // Five figures rounded to a tenth each.
        expect(Math.abs(shown.slice(0, 5).reduce((sum, value) => sum + value, 0) - (shown[5] ?? Number.NaN))).toBeLessThan(0.3);
        await page.locator('.split-sum .figure').click();
        const dialog = page.getByRole('dialog');
        const inside = await dialog.locator('tr.field-rows-strong td').first().innerText();
        expect(Number(inside.replace('−', '-').replace(/\s?g/u, ''))).toBeCloseTo(shown[5] ?? Number.NaN, 0);
        await page.keyboard.press('Escape');
        await dialog.waitFor({ state: 'detached' });
      }
    });
  });

  it('of the whole keyboard open to the counts shown, and the capability stands beside its count', async () => {
    await onPage(`/pianos/${desk.demo}/action`, {}, async (page) => {
      const row = page.locator('.even-figures > div', { hasText: 'Inside tolerance' });
      const count = await row.locator('.figure').innerText();
      await row.locator('.figure').click();
      const strong = page.getByRole('dialog').locator('tr.field-rows-strong td');
      await expect.poll(() => strong.innerText()).toBe(count);
      await page.keyboard.press('Escape');
      expect(await page.locator('.even-figures > div', { hasText: 'Capability' }).innerText()).toContain(`beside ${count} of 88 inside`);
    });
  });
});

it('asks a fresh piano what is to be even, takes decimal commas, and can undo the answer', async () => {
  const { id } = await desk.call<{ id: string }>('POST', '/api/pianos', { name: 'Fresh piano, invented', kind: 'grand', firstMidi: 21, lastMidi: 108 });
  await onPage(`/pianos/${id}/action`, { locale: 'de-DE' }, async (page) => {
    await page.getByText('Noch ist keine Taste gewogen').waitFor();
    await page.getByRole('radio', { name: 'Balancegewicht' }).focus();
    await page.keyboard.press('Space');
    const [target, tolerance, least] = [page.getByLabel('Vorgabe'), page.getByLabel('Toleranz'), page.getByLabel('Aufgewicht mindestens')];
    await target.fill('37,5');
    await tolerance.fill('1,5');
    await least.fill('viel');
    await page.keyboard.press('Enter');
    await expect.poll(() => least.getAttribute('aria-invalid')).toBe('true');
    await least.fill('20');
    await page.keyboard.press('Enter');
    await page.getByText('37,5 g, ± 1,5 g', { exact: false }).waitFor();
    await page.locator('.intent-line button').focus();
    await page.keyboard.press('Control+z');
    await page.getByRole('radio', { name: 'Balancegewicht' }).waitFor();
  });
});

it('changes nothing when the wheel turns over a figure being typed', async () => {
  await onPage(`/pianos/${desk.demo}/action`, {}, async (page) => {
    await page.getByRole('button', { name: 'Change', exact: true }).click();
    const field = page.getByLabel('Tolerance');
    await field.focus();
    const before = await field.inputValue();
    await field.hover();
    await page.mouse.wheel(0, 240);
    await page.mouse.wheel(0, -480);
    expect(before).not.toBe('');
    expect(await field.inputValue()).toBe(before);
  });
});

const looks = [
  { colorScheme: 'light', viewport: { width: 1280, height: 900 } },
  { colorScheme: 'dark', viewport: { width: 1024, height: 768 }, hasTouch: true },
  { colorScheme: 'light', viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, locale: 'de-DE' },
  { colorScheme: 'dark', viewport: { width: 390, height: 844 }, contrast: 'more' },
] as const;

describe.each(looks)('with a key chosen, $colorScheme, $viewport.width wide', (look) => {
  it('is accessible, keeps within the page, and so does the figure panel', async () => {
    await onPage(`/pianos/${desk.demo}/action`, look, async (page) => {
      await page.keyboard.press('n');
      await page.locator('.key-panel').waitFor();
      await expectAccessible(page);
      await expectNoSidewaysScroll(page);
      await page.locator('.key-panel .figure').first().click();
      await page.getByRole('dialog').waitFor();
      await expectAccessible(page);
      await expectNoSidewaysScroll(page);
    });
  });
});

it('brings the key chosen into view where the keyboard is wider than the screen', async () => {
  await onPage(`/pianos/${desk.demo}/action`, { viewport: { width: 390, height: 844 } }, async (page) => {
    await page.keyboard.press('Shift+N');
    const strip = page.locator('.plots-column .scene-chosen').first();
    await expect.poll(async () => {
      const box = await strip.boundingBox();
      return box !== null && box.x >= 0 && box.x + box.width <= 390;
    }).toBe(true);
    const [keys, plots] = await Promise.all([page.locator('.keys-column .keys-scroll').evaluate((element) => element.scrollLeft), page.locator('.plots-column').evaluate((element) => element.scrollLeft)]);
    expect(keys).toBeGreaterThan(0);
    expect(keys).toBe(plots);
  });
});

it('complains of nothing on the console', () => {
  expect(desk.complaints).toEqual([]);
});
