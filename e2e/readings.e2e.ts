import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { type Desk, fileDesk } from './support/desk.ts';

let piano = '';
const desk = fileDesk();
beforeEach(async () => {
  piano = (await desk.call<{ id: string }>('POST', '/api/pianos', { name: 'Workshop grand', kind: 'grand' })).id;
  await desk.call('POST', `/api/pianos/${piano}/sessions`, { cycle: 1, state: 'found', stepG: 1 });
});

interface Kept {
  readonly quantity: string;
  readonly index: number;
  readonly typed: string | null;
  readonly value: number | null;
  readonly outcome: string | null;
  readonly sessionId: string | null;
}

async function kept(): Promise<readonly Kept[]> {
  return (await desk.call<{ readings: readonly Kept[] }>('GET', `/api/pianos/${piano}/readings`)).readings;
}

/** Standing figures as short text, in the order of keys: `1 downWeightG 49`. */
async function figures(): Promise<readonly string[]> {
  return [...(await kept())].sort((a, b) => a.index - b.index || a.quantity.localeCompare(b.quantity)).map(({ index, quantity, typed, outcome }) => `${String(index)} ${quantity} ${typed ?? outcome ?? ''}`);
}

/** Opens the readings page in a mode, with the focus where figures are typed. */
async function openReadings(mode: 'Walk the keys' | 'Grid' | 'Lever arms', options: Parameters<Desk['open']>[1] = {}): Promise<Page> {
  const page = await desk.open(`/pianos/${piano}/readings`, options);
  await page.getByRole('radio', { name: mode }).focus();
  await page.keyboard.press('Space');
  if (mode === 'Grid') await cell(page, 1, 1).click();
  return page;
}

/** A cell of the grid: rows and columns from 1, the key's own column not counted. */
const cell = (page: Page, row: number, column: number) => page.locator(`.grid tr[aria-rowindex="${String(row + 1)}"] td[aria-colindex="${String(column + 1)}"]`);
const textOf = async (page: Page, row: number, column: number): Promise<string> => (await cell(page, row, column).innerText()).replaceAll(/[…▲≠✕✎\s]/gu, '');
const focusAt = (page: Page): Promise<string> => page.evaluate(() => {
  const here = document.activeElement;
  return `${here?.closest('tr')?.getAttribute('aria-rowindex') ?? '?'} ${here?.closest('td')?.getAttribute('aria-colindex') ?? '?'}`;
});
const pasteInto = (page: Page, text: string): Promise<void> => page.evaluate((block) => {
  const clipboardData = new DataTransfer();
  clipboardData.setData('text/plain', block);
  document.activeElement?.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
}, text);
/** Strokes as a scale sends them, five milliseconds apart by their own time stamps, however long this machine takes over them. */
async function sendAsScale(page: Page, strokes: readonly string[]): Promise<void> {
  const wire = await page.context().newCDPSession(page);
  const begun = Date.now() / 1000;
  for (const [index, key] of strokes.entries()) {
    const timestamp = begun + index * 0.005;
    const code = key === 'Tab' ? 9 : key === '.' ? 190 : key.charCodeAt(0);
    await wire.send('Input.dispatchKeyEvent', { type: 'keyDown', key, windowsVirtualKeyCode: code, timestamp, ...(key === 'Tab' ? {} : { text: key }) });
    await wire.send('Input.dispatchKeyEvent', { type: 'keyUp', key, windowsVirtualKeyCode: code, timestamp });
  }
  await wire.detach();
}
const saved = (page: Page): Promise<void> => page.getByRole('button', { name: /^Saved/u }).waitFor();

const block88 = Array.from({ length: 88 }, (_, index) => `${String(45 + (index % 9))}\t${String(20 + (index % 7))}`);

describe('too rich for the bench, targets too small', () => {
  it('three keys are walked by keyboard alone, an unlikely and an impossible figure stopping on the way', async () => {
    const page = await openReadings('Walk the keys');
    const input = page.locator('.walk-input');
    await expect.poll(() => input.evaluate((element) => element === document.activeElement)).toBe(true);
    await page.keyboard.type('49/26');
    await page.keyboard.press('Enter');
    await page.locator('.walk-note', { hasText: 'A♯0' }).waitFor();
    await page.keyboard.type('4900');
    await page.keyboard.press('Enter');
    await page.getByText('4900 cannot be. Allowed is 0 to 300').waitFor();
    expect(await input.inputValue()).toBe('4900');
    await page.keyboard.press('Escape');
    await page.keyboard.type('95');
    await page.keyboard.press('Enter');
    await page.getByText('95 is outside the usual 35 to 75').waitFor();
    await page.keyboard.press('Enter');
    await page.keyboard.type('24');
    await page.keyboard.press('Enter');
    await page.locator('.walk-note', { hasText: /^B0$/u }).waitFor();
    await page.keyboard.type('50 27');
    await page.keyboard.press('Enter');
    await page.getByText('3 of 88 keys done').first().waitFor();
    await saved(page);
    expect(await figures()).toEqual(['1 downWeightG 49', '1 upWeightG 26', '2 downWeightG 95', '2 upWeightG 24', '3 downWeightG 50', '3 upWeightG 27']);
    expect((await kept()).every(({ sessionId }) => sessionId !== null)).toBe(true);
    await expectAccessible(page);
    await page.context().close();
  });

  it('a scale that types and ends with Tab goes on by itself', async () => {
    const page = await openReadings('Walk the keys');
    await page.locator('.walk-input').focus();
    await sendAsScale(page, ['4', '9', '.', '5', 'Tab']);
    await sendAsScale(page, ['2', '6', '.', '0', 'Tab']);
    await page.locator('.walk-note', { hasText: 'A♯0' }).waitFor();
    await saved(page);
    expect(await figures()).toEqual(['1 downWeightG 49.5', '1 upWeightG 26.0']);
    await page.context().close();
  });

  it('every target of the walk is 64 pixels or more on a phone, and the walk comes first', async () => {
    const page = await desk.open(`/pianos/${piano}/readings`, { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
    await page.locator('.walk-input').waitFor();
    const small = await page.locator('.pad-key, .walk-slot').evaluateAll((keys) => keys.filter((key) => key.getBoundingClientRect().height < 64 || key.getBoundingClientRect().width < 64).map((key) => key.textContent));
    expect(small).toEqual([]);
    await page.getByRole('button', { name: '5', exact: true }).tap();
    await page.getByRole('button', { name: '1', exact: true }).tap();
    await page.getByRole('button', { name: 'Enter', exact: true }).tap();
    await page.getByRole('button', { name: 'does not return' }).tap();
    await page.locator('.walk-note', { hasText: 'A♯0' }).waitFor();
    await saved(page);
    expect(await figures()).toEqual(['1 downWeightG 51', '1 upWeightG noReturn']);
    await expectNoSidewaysScroll(page);
    await page.context().close();
  });
});

describe('no full keyboard path, Tab leaves the grid', () => {
  it('arrows, typing, F2, Esc, Enter, Delete and fill down do what a grid does, balance and friction following', async () => {
    const page = await openReadings('Grid');
    await page.keyboard.type('49');
    await page.keyboard.press('Tab');
    expect(await focusAt(page)).toBe('2 3');
    await page.keyboard.type('26');
    await page.keyboard.press('Enter');
    expect(await focusAt(page)).toBe('3 3');
    expect([await textOf(page, 1, 3), await textOf(page, 1, 4)]).toEqual(['37.5', '11.5']);
    for (const plot of await page.locator('.live-plots svg').all()) {
      const box = await plot.boundingBox();
      expect(box !== null && box.height > 120 && box.width > 300).toBe(true);
    }
    await page.keyboard.press('Control+Home');
    await page.keyboard.press('F2');
    await page.keyboard.type('7');
    await page.keyboard.press('Escape');
    expect(await textOf(page, 1, 1)).toBe('49');
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Control+d');
    expect([await textOf(page, 2, 1), await textOf(page, 3, 1), await textOf(page, 4, 1)]).toEqual(['49', '49', '']);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Delete');
    expect(await textOf(page, 3, 1)).toBe('');
    await page.keyboard.press('Control+End');
    expect(await focusAt(page)).toBe('89 5');
    await page.keyboard.press('PageUp');
    await page.keyboard.press('Home');
    await page.keyboard.type('sticks');
    await page.keyboard.press('Enter');
    await saved(page);
    expect((await figures()).filter((figure) => !figure.includes('sticks'))).toEqual(['1 downWeightG 49', '1 upWeightG 26', '2 downWeightG 49']);
    expect((await figures()).some((figure) => figure.endsWith('downWeightG sticks'))).toBe(true);
    await expectAccessible(page);
    await page.context().close();
  });

  it('the grid is one stop of the Tab key and no trap', async () => {
    const page = await openReadings('Grid');
    await page.keyboard.press('ArrowDown');
    const inGrid = (): Promise<boolean> => page.evaluate(() => document.activeElement?.closest('.grid') !== null);
    expect(await inGrid()).toBe(true);
    await page.keyboard.press('Shift+Tab');
    expect(await inGrid()).toBe(false);
    await page.keyboard.press('Tab');
    expect(await focusAt(page)).toBe('3 2');
    await page.keyboard.press('Tab');
    expect(await inGrid()).toBe(false);
    await page.context().close();
  });

  it('a figure that cannot be stays in view with what is allowed, and nothing is written', async () => {
    const page = await openReadings('Grid');
    await page.keyboard.type('4900');
    await page.keyboard.press('Enter');
    await page.getByRole('alert').getByText('Allowed is 0 to 300').waitFor();
    expect(await page.locator('.cell-input').inputValue()).toBe('4900');
    await page.getByRole('radio', { name: 'Walk the keys' }).focus();
    await page.reload();
    await page.locator('.cell-draft', { hasText: '4900' }).waitFor();
    expect(await figures()).toEqual([]);
    await page.context().close();
  });
});

describe('no block paste from a spreadsheet, or the trailing newline overwrites the cell below', () => {
  it('88 pairs with a trailing newline land on 88 keys as one event', async () => {
    const page = await openReadings('Grid');
    await pasteInto(page, `${block88.join('\r\n')}\r\n`);
    await page.getByText('176 cells pasted').first().waitFor();
    await saved(page);
    const now = await kept();
    expect(now).toHaveLength(176);
    expect(now.find(({ index, quantity }) => index === 88 && quantity === 'upWeightG')?.value).toBe(20 + (87 % 7));
    const { events } = await desk.call<{ events: readonly { kind: string }[] }>('GET', `/api/pianos/${piano}/events`);
    expect(events.filter(({ kind }) => kind === 'readings.written')).toHaveLength(1);
    await page.context().close();
  });

  it('a trailing newline leaves the cell below alone', async () => {
    const page = await openReadings('Grid');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.type('47');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Control+Home');
    await pasteInto(page, '49\n');
    await saved(page);
    expect(await figures()).toEqual(['1 downWeightG 49', '2 downWeightG 47']);
    await page.context().close();
  });

  it('rows that would fall below the last key are counted, and nothing is pasted', async () => {
    const page = await openReadings('Grid');
    for (let page_ = 0; page_ < 12; page_ += 1) await page.keyboard.press('PageDown');
    for (let up = 0; up < 7; up += 1) await page.keyboard.press('ArrowUp');
    expect(await focusAt(page)).toBe('82 2');
    await pasteInto(page, block88.slice(0, 20).join('\n'));
    await page.getByText('12 rows would fall below key 88; nothing was pasted.').waitFor();
    await expectAccessible(page);
    await page.keyboard.press('Escape');
    expect(await figures()).toEqual([]);
    await page.context().close();
  });

  it('cells that cannot be taken are named before anything is written', async () => {
    const page = await openReadings('Grid');
    await pasteInto(page, '49\t26\nabc\t4900');
    await page.getByText('2 cells cannot be taken:').waitFor();
    await page.getByText('A♯0, Up weight: “4900”. Allowed is 0 to 300').waitFor();
    expect(await figures()).toEqual([]);
    await page.getByRole('button', { name: 'Paste 2 cells' }).click();
    await saved(page);
    expect(await figures()).toEqual(['1 downWeightG 49', '1 upWeightG 26']);
    await page.context().close();
  });
});

describe('undo missing or undoing something elsewhere', () => {
  it('a paste is taken back as one step, also after a reload', async () => {
    const page = await openReadings('Grid');
    await page.keyboard.type('51');
    await page.keyboard.press('Enter');
    await saved(page);
    await page.keyboard.press('ArrowUp');
    await pasteInto(page, block88.join('\n'));
    await expect.poll(async () => (await kept()).length).toBe(176);
    await saved(page);
    await page.reload();
    await cell(page, 1, 1).click();
    await page.keyboard.press('Control+z');
    await expect.poll(figures).toEqual(['1 downWeightG 51']);
    await expect.poll(() => textOf(page, 1, 1)).toBe('51');
    await page.context().close();
  });
});

describe('decimal comma dropped or multiplied by 100', () => {
  it('49,5 is forty-nine and a half, in a German browser and an English one', async () => {
    for (const [index, locale] of ['de-DE', 'en-GB'].entries()) {
      const page = await desk.open(`/pianos/${piano}/readings`, { locale });
      await cell(page, index + 1, 1).click();
      await page.keyboard.type('49,5');
      await page.keyboard.press('Enter');
      await expect.poll(() => textOf(page, index + 1, 1)).toBe(locale === 'de-DE' ? '49,5' : '49.5');
      await expect.poll(async () => (await kept()).find((reading) => reading.index === index + 1)?.value).toBe(49.5);
      await page.context().close();
    }
  });
});

describe('mouse wheel changes a number', () => {
  it('the wheel scrolls and changes nothing, also over a cell being edited', async () => {
    const page = await openReadings('Grid');
    await page.keyboard.type('49');
    await page.keyboard.press('Enter');
    await saved(page);
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('F2');
    await cell(page, 1, 1).hover();
    for (const by of [-240, 240, -240]) await page.mouse.wheel(0, by);
    expect(await page.locator('.cell-input').inputValue()).toBe('49');
    await page.keyboard.press('Enter');
    expect(await page.locator('input[type="number"]').count()).toBe(0);
    await saved(page);
    expect(await figures()).toEqual(['1 downWeightG 49']);
    await page.context().close();
  });
});

describe('offline edits overwritten on sync', () => {
  it('what was typed while the server was away outlives a reload and goes out when it is back', async () => {
    const page = await openReadings('Grid');
    await page.context().route('**/api/pianos/*/readings', (route) => (route.request().method() === 'POST' ? route.abort() : route.fallback()));
    for (const figure of ['49', '50', '51']) {
      await page.keyboard.type(figure);
      await page.keyboard.press('Enter');
    }
    await page.getByRole('button', { name: /^3 figures wait/u }).waitFor();
    page.on('dialog', (dialog) => void dialog.accept());
    await page.reload();
    await expect.poll(() => textOf(page, 3, 1)).toBe('51');
    expect(await figures()).toEqual([]);
    await page.context().unroute('**/api/pianos/*/readings');
    await page.evaluate(() => window.dispatchEvent(new Event('online')));
    await saved(page);
    expect(await figures()).toEqual(['1 downWeightG 49', '2 downWeightG 50', '3 downWeightG 51']);
    await page.context().close();
  });

  it('what someone else wrote meanwhile is shown beside what was typed, and the person chooses', async () => {
    const page = await openReadings('Grid');
    await desk.call('POST', `/api/pianos/${piano}/readings`, { cycle: 1, state: 'found', entries: [{ quantity: 'downWeightG', scope: 'key', index: 1, typed: '55' }] });
    await page.keyboard.type('49');
    await page.keyboard.press('Enter');
    const note = page.getByRole('alert').filter({ hasText: 'Someone else wrote here meanwhile' });
    await note.getByText('55').waitFor();
    await note.getByText('49').waitFor();
    expect((await figures())[0]).toBe('1 downWeightG 55');
    await note.getByRole('button', { name: 'Keep what was typed here' }).click();
    await saved(page);
    expect(await figures()).toEqual(['1 downWeightG 49']);
    await page.context().close();
  });
});

describe('dry run that lies', () => {
  it('an import does what its preview said, and is taken back as a whole', async () => {
    const page = await openReadings('Grid');
    await page.getByRole('button', { name: 'Import …' }).click();
    const dialog = page.getByRole('dialog', { name: 'Import readings' });
    const csv = ['Key;Down weight;Up weight', '1;49,5;26', '2;50;27', '3;5000;27', ''].join('\r\n');
    await dialog.locator('input[type="file"]').setInputFiles({ name: 'weights.csv', mimeType: 'text/csv', buffer: Buffer.from(csv) });
    await dialog.getByText('2 new, 0 replacing, 0 the same, 1 refused, 0 empty').waitFor();
    await expectAccessible(page);
    await dialog.getByRole('combobox', { name: 'Session the weights in this file belong to' }).selectOption({ index: 1 });
    await dialog.getByRole('button', { name: 'Import 2 rows' }).click();
    await dialog.getByText(/^Imported: 2 new/u).waitFor();
    await dialog.getByRole('button', { name: 'Close' }).last().click();
    expect(await figures()).toEqual(['1 downWeightG 49,5', '1 upWeightG 26', '2 downWeightG 50', '2 upWeightG 27']);
    await cell(page, 1, 1).click();
    await page.keyboard.press('Control+z');
    await expect.poll(figures).toEqual([]);
    await page.context().close();
  });
});

it('no page complained', () => {
  expect(desk.complaints.filter((complaint) => !/409|Failed to load resource|ERR_FAILED/u.test(complaint))).toEqual([]);
});
