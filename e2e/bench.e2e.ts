import type { BrowserContextOptions, Locator, Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { fileDesk } from './support/desk.ts';

let piano = '';
const desk = fileDesk();
beforeEach(async () => {
  piano = (await desk.call<{ id: string }>('POST', '/api/pianos', { name: 'Workshop grand', kind: 'grand' })).id;
});

interface Kept {
  readonly id: string;
  readonly index: number;
  readonly typed: string | null;
  readonly outcome: string | null;
  readonly sessionId: string | null;
  readonly at: string;
}
const kept = async (): Promise<readonly Kept[]> => [...(await desk.call<{ readings: readonly Kept[] }>('GET', `/api/pianos/${piano}/readings`)).readings].sort((a, b) => a.index - b.index);
const typedAndSession = async (): Promise<readonly (readonly [string | null, boolean])[]> => (await kept()).map(({ typed, sessionId }) => [typed, sessionId !== null] as const);
const addSession = (state = 'found') => desk.call<{ id: string }>('POST', `/api/pianos/${piano}/sessions`, { cycle: 1, state, stepG: 1 });
const write = (state: string, ...figures: readonly (readonly [key: number, quantity: string, typed: string])[]) =>
  desk.call('POST', `/api/pianos/${piano}/readings`, { cycle: 1, state, entries: figures.map(([index, quantity, typed]) => ({ quantity, scope: 'key', index, typed })) });

const bench: BrowserContextOptions = { viewport: { width: 1024, height: 768 } };
const phone: BrowserContextOptions = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };
const sizes = [['1024×768', bench], ['390×844', phone]] as const;

async function openReadings(mode: 'Walk the keys' | 'Grid', options: BrowserContextOptions = bench): Promise<Page> {
  const page = await desk.open(`/pianos/${piano}/readings`, options);
  await page.getByRole('radio', { name: mode }).focus();
  await page.keyboard.press('Space');
  await page.locator(mode === 'Grid' ? '.grid' : '.walk-input').waitFor();
  return page;
}
const cell = (page: Page, row: number, column: number): Locator => page.locator(`.grid tr[aria-rowindex="${String(row + 1)}"] td[aria-colindex="${String(column + 1)}"]`);
const textOf = async (page: Page, row: number, column: number): Promise<string> => (await cell(page, row, column).innerText()).replaceAll(/[…?▲≠✕✎\s]/gu, '');
const saved = (page: Page): Promise<void> => page.getByRole('button', { name: /^Saved/u }).waitFor();
const boxOf = async (place: Locator): Promise<{ readonly x: number; readonly y: number; readonly width: number; readonly height: number }> => {
  const box = await place.boundingBox();
  if (box === null) throw new Error('not in view');
  return box;
};

describe('figures without the way they were weighed', () => {
  it('are typed while it is asked, wait on the device through a reload, and go out with the answer', async () => {
    const page = await openReadings('Grid');
    await cell(page, 1, 1).click();
    for (const figure of ['49', '50']) {
      await page.keyboard.type(figure);
      await page.keyboard.press('Enter');
    }
    const bar = page.getByRole('region', { name: 'Weighing session' });
    await bar.getByText('2 figures wait.').waitFor();
    await page.getByRole('button', { name: /^2 figures wait for your answer/u }).waitFor();
    expect(await page.getByRole('dialog').count()).toBe(0);
    await expectAccessible(page);
    await page.reload();
    await expect.poll(() => textOf(page, 2, 1)).toBe('50');
    expect(await kept()).toEqual([]);
    await bar.getByRole('button', { name: 'New session' }).click();
    await page.getByRole('textbox', { name: 'Step of the weights, g' }).fill('0,5');
    await page.getByRole('button', { name: 'Open a session' }).click();
    await saved(page);
    await expect.poll(typedAndSession).toEqual([['49', true], ['50', true]]);
    await page.context().close();
  });

  it('may stay not stated: the walk goes on under the hand', async () => {
    const page = await openReadings('Walk the keys', phone);
    await page.locator('.walk-input').fill('49/26');
    await page.keyboard.press('Enter');
    await page.locator('.walk-note', { hasText: 'A♯0' }).waitFor();
    await page.getByRole('button', { name: 'Not stated' }).tap();
    await saved(page);
    expect(await typedAndSession()).toEqual([['49', false], ['26', false]]);
    await expect.poll(() => page.locator('.walk-input').evaluate((input) => input === document.activeElement)).toBe(true);
    await page.context().close();
  });

  it('come into a session afterwards in one step: typed text and time stay, a job to weigh again stays open, one undo takes it back', async () => {
    await write('finished', [40, 'downWeightG', '49,50'], [40, 'upWeightG', '26']);
    const { work } = await desk.call<{ work: { id: string }[] }>('POST', `/api/pianos/${piano}/work`, { items: [{ cycle: 1, key: 40, remedy: 'repinCentres', stage: 1, remeasure: ['downWeightG', 'upWeightG'] }] });
    await desk.call('PATCH', `/api/pianos/${piano}/work/${work[0]?.id ?? ''}`, { status: 'done' });
    await addSession('finished');
    const before = await kept();
    const page = await openReadings('Grid');
    await page.getByRole('radio', { name: 'As finished' }).focus();
    await page.keyboard.press('Space');
    await page.getByRole('button', { name: 'Put 2 figures into this session' }).click();
    await page.getByText('2 figures put into the session').waitFor();
    const after = await kept();
    expect(after.map(({ typed, at, sessionId }) => [typed, at, sessionId !== null])).toEqual(before.map(({ typed, at }) => [typed, at, true]));
    await page.getByRole('link', { name: 'Work' }).click();
    await page.getByRole('link', { name: /^Weigh again|Down, Up/u }).waitFor();
    await page.getByRole('link', { name: 'Readings' }).click();
    await page.locator('.grid').waitFor();
    await page.keyboard.press('Control+z');
    await expect.poll(kept).toEqual(before);
    await page.context().close();
  });
});

describe('a half-filled form lost', () => {
  it('the session form opens as it was left after a reload, and empty after a cancel', async () => {
    const page = await openReadings('Grid');
    const step = page.getByRole('textbox', { name: 'Step of the weights, g' });
    const open = () => page.getByRole('button', { name: 'New session' }).click();
    await open();
    await step.fill('0,5');
    await page.reload();
    await open();
    expect(await step.inputValue()).toBe('0,5');
    await page.getByText('it was kept on this device').waitFor();
    await page.getByRole('button', { name: 'Cancel' }).click();
    await open();
    expect(await step.inputValue()).toBe('');
    await page.context().close();
  });

  it('the card of a piano outlives a change of page, sections and all, and is let go once saved', async () => {
    const page = await desk.open('/pianos', bench);
    const open = () => page.getByRole('button', { name: 'Take a piano in' }).first().click();
    await open();
    await page.getByRole('textbox', { name: 'Name' }).first().fill('Long grand');
    await page.getByRole('button', { name: 'Add a section' }).click();
    await page.locator('.sections li').getByRole('textbox', { name: 'Name' }).fill('Bass');
    await page.locator('.sections li').getByRole('textbox', { name: 'Last key' }).fill('0');
    await page.keyboard.press('Escape');
    await page.getByRole('link', { name: 'Settings' }).click();
    await page.getByRole('link', { name: 'Pianos' }).click();
    await open();
    expect(await page.getByRole('textbox', { name: 'Name' }).first().inputValue()).toBe('Long grand');
    await page.getByRole('button', { name: 'Take it in' }).click();
    await page.getByText('“0” is no key of this piano').waitFor();
    await expectAccessible(page);
    await page.locator('.sections li').getByRole('textbox', { name: 'Last key' }).fill('E2');
    await page.getByRole('button', { name: 'Take it in' }).click();
    await page.getByRole('heading', { name: 'Long grand' }).waitFor();
    const { pianos } = await desk.call<{ pianos: { instrument: { name: string; sections: unknown } }[] }>('GET', '/api/pianos');
    expect(pianos.find(({ instrument }) => instrument.name === 'Long grand')?.instrument.sections).toEqual([{ name: 'Bass', firstKey: 1, lastKey: 20 }]);
    expect(await page.evaluate(() => Object.keys(localStorage).filter((name) => name.startsWith('wrestplank.draft.')))).toEqual([]);
    await page.context().close();
  });

  it('what is to be even and a remark at a key outlive a reload', async () => {
    await write('found', [1, 'downWeightG', '49'], [1, 'upWeightG', '26']);
    const page = await desk.open(`/pianos/${piano}/action`, bench);
    await page.getByRole('radio', { name: /^Down weight the same/u }).check({ force: true });
    await page.getByRole('textbox', { name: 'Target' }).fill('49');
    await page.reload();
    await expect.poll(() => page.getByRole('textbox', { name: 'Target' }).inputValue()).toBe('49');
    await page.goto(`${desk.bench.url}/pianos/${piano}/readings`);
    await page.getByRole('radio', { name: 'Walk the keys' }).focus();
    await page.keyboard.press('Space');
    await page.getByRole('textbox', { name: 'Remark on this key' }).fill('rubs');
    await page.reload();
    await expect.poll(() => page.getByRole('textbox', { name: 'Remark on this key' }).inputValue()).toBe('rubs');
    await page.context().close();
  });
});

describe.each(sizes)('a screen that moves under the hand, %s', (_, size) => {
  it('the heads of the grid stay in view over 88 rows, and columns beside the view say so', async () => {
    const page = await openReadings('Grid', size);
    const scroller = page.locator('.grid-scroll');
    expect(await scroller.evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth)).toBe(0);
    expect(await page.getByRole('button', { name: 'To the columns on the right' }).count()).toBe(0);
    await page.locator('.column-chooser summary').click();
    for (const box of await page.locator('.column-list input').all()) await box.check();
    await page.locator('.column-chooser summary').click();
    await page.getByRole('button', { name: 'To the columns on the right' }).click();
    await scroller.evaluate((element) => { element.scrollTop = 2000; });
    const [frame, head, row] = await Promise.all([boxOf(scroller), boxOf(page.locator('.grid-corner')), boxOf(page.locator('.grid tr[aria-rowindex="62"] th'))]);
    expect([Math.round(head.y - frame.y), Math.round(head.x - frame.x), Math.round(row.x - frame.x)]).toEqual([1, 1, 1]);
    await page.getByRole('button', { name: 'To the columns on the left' }).click();
    await expectNoSidewaysScroll(page);
    await page.context().close();
  });

  it('the pad stays where it is whatever is said, and how saving stands stays in view', async () => {
    const page = await openReadings('Walk the keys', size);
    const input = page.locator('.walk-input');
    const pad = async (): Promise<number> => Math.round((await boxOf(page.locator('.pad'))).y);
    const start = await pad();
    for (const figures of ['49/26', '4900', 'x', '95/98', '49/26/30']) {
      await input.fill(figures);
      await page.keyboard.press('Enter');
      expect([figures, await pad()]).toEqual([figures, start]);
    }
    const state = await boxOf(page.locator('.outbox-state'));
    expect(state.y).toBeGreaterThanOrEqual(0);
    expect(state.y + state.height).toBeLessThanOrEqual(60);
    await page.context().close();
  });
});

describe('targets too small', () => {
  it('everything pressed on the Readings page of a telephone is 44 pixels or more', async () => {
    await addSession();
    for (const mode of ['Walk the keys', 'Grid'] as const) {
      const page = await openReadings(mode, phone);
      const small = await page.locator('button, a, summary, select, .choice label').evaluateAll((targets) => targets.filter((target) => {
        const { width, height } = target.getBoundingClientRect();
        // A help sign is small to see; what takes the touch lies around it.
        const touch = target.classList.contains('help-button') ? Number.parseFloat(getComputedStyle(target, '::after').width) : Math.min(width, height);
        return height > 0 && touch < 44 && target.closest('.grid') === null && !target.classList.contains('skip');
      }).map(({ textContent }) => textContent));
      expect(small).toEqual([]);
      await page.context().close();
    }
  });
});

describe('an import on a telephone', () => {
  it('fits, leads to what was refused, asks for the session, and keeps the mapping through Esc', async () => {
    await addSession();
    const page = await openReadings('Grid', phone);
    await page.getByRole('button', { name: 'Import …' }).tap();
    const dialog = page.getByRole('dialog', { name: 'Import readings' });
    const lines = Array.from({ length: 12 }, (_, index) => `${String(index + 1)};${index === 10 ? '5000' : '49,5'};26;${'long remark '.repeat(4)}`);
    await dialog.locator('input[type="file"]').setInputFiles({ name: 'weights.csv', mimeType: 'text/csv', buffer: Buffer.from(['Key;Down weight;Other;Words', ...lines, ''].join('\r\n')) });
    await dialog.getByText(/1 refused/u).waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.className)).toBe('import-problem');
    await expectAccessible(page);
    await expectNoSidewaysScroll(page);
    const [frame, foot] = await Promise.all([boxOf(dialog), boxOf(dialog.locator('.import-foot'))]);
    expect(frame.width).toBeLessThanOrEqual(390);
    expect(foot.y + foot.height).toBeLessThanOrEqual(844);
    expect(await dialog.locator('.import-scroll').evaluate(({ scrollWidth, clientWidth }) => scrollWidth > clientWidth)).toBe(true);
    const run = dialog.getByRole('button', { name: /^Import \d+ rows/u });
    expect(await run.isDisabled()).toBe(true);
    const other = dialog.getByLabel(/Column C/u);
    await other.selectOption('upWeightG');
    await expect.poll(() => other.inputValue()).toBe('upWeightG');
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Import …' }).tap();
    await expect.poll(() => other.inputValue()).toBe('upWeightG');
    const session = dialog.getByRole('combobox', { name: 'Session the weights in this file belong to' });
    await session.selectOption('new');
    await dialog.getByRole('textbox', { name: 'Step of the weights, g' }).fill('0.5');
    await dialog.getByRole('button', { name: 'Open a session' }).click();
    await expect.poll(() => session.inputValue()).not.toBe('new');
    await expect.poll(() => run.isEnabled()).toBe(true);
    await run.focus();
    await page.keyboard.press('Enter');
    await dialog.getByText(/^Imported/u).waitFor();
    const readings = await kept();
    expect(new Set(readings.map(({ sessionId }) => sessionId)).size).toBe(1);
    expect([readings.length, readings[0]?.sessionId !== null]).toEqual([22, true]);
    await page.context().close();
  });
});

describe('the walk as a hand expects it', () => {
  it('an outcome pressed leaves the stroke to the figure: Enter does not press it again', async () => {
    await addSession();
    const page = await openReadings('Walk the keys');
    await page.getByRole('button', { name: 'is over range' }).click();
    await page.keyboard.type('26');
    await page.keyboard.press('Enter');
    await page.locator('.walk-note', { hasText: 'A♯0' }).waitFor();
    await saved(page);
    expect((await kept()).map(({ typed, outcome }) => typed ?? outcome)).toEqual(['overRange', '26']);
    await page.context().close();
  });

  it('a scale that sends a sign, spaces, its unit and a carriage return is understood; an unlikely figure is not kept by skipping', async () => {
    await addSession();
    const page = await openReadings('Walk the keys');
    await page.keyboard.type('+  49.5 g\r');
    await page.keyboard.type('   26.0 g\r');
    await page.locator('.walk-note', { hasText: 'A♯0' }).waitFor();
    await page.keyboard.type('95\r');
    await page.getByText('95 is outside the usual').waitFor();
    await page.getByRole('button', { name: 'Skip' }).click();
    expect(await page.locator('.walk-input').inputValue()).toBe('95');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Skip' }).click();
    await page.locator('.walk-note', { hasText: /^B0$/u }).waitFor();
    await saved(page);
    expect((await kept()).map(({ typed }) => typed)).toEqual(['+  49.5 g', '26.0 g']);
    await page.context().close();
  });
});

it('no page complained', () => {
  expect(desk.complaints).toEqual([]);
});
