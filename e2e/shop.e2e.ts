import { readFile } from 'node:fs/promises';
import type { Locator } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { fileDesk } from './support/desk.ts';

const desk = fileDesk({}, async () => {
  piano = (await desk.call<{ id: string }>('POST', '/api/pianos', { name: 'Bench piano, invented', kind: 'grand' })).id;
  const job = (remark: string, stage: number) => ({ cycle: 1, key: null, remedy: 'other', remark, stage });
  await desk.call('POST', `/api/pianos/${piano}/work`, { items: [job('Glue the bridge cap', 5), job('Ease the keys', 1)] });
});
let piano = '';
const tablet = { viewport: { width: 1024, height: 768 } } as const;
const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, colorScheme: 'dark' } as const;

interface Card { readonly kind: string; readonly id: string; readonly startedAt?: string; readonly startsAt?: string; readonly stoppedAt?: string | null; readonly amount?: number; readonly name?: string; readonly status?: string; readonly after?: object | null; readonly details: { readonly name?: string } | null }
const cardsOf = async (kind: string): Promise<readonly Card[]> => (await desk.call<{ cards: readonly Card[] }>('GET', '/api/shop')).cards.filter((card) => card.kind === kind);

describe('the bench', () => {
  it('moves a card by keyboard, the focus going along, and lets it wait and go on', async () => {
    const page = await desk.open('/bench', tablet);
    await page.getByRole('button', { name: 'Move on to “In hand”: Ease the keys, Bench piano, invented' }).press('ArrowRight');
    const back = page.getByRole('button', { name: 'Move back to “To do”: Ease the keys, Bench piano, invented' });
    await back.waitFor();
    expect(await back.evaluate((button) => button === document.activeElement)).toBe(true);
    await page.getByRole('button', { name: 'Waits …, say what for: Glue the bridge cap, Bench piano, invented' }).press('Enter');
    await page.getByLabel('Waits for', { exact: true }).selectOption('glue');
    await page.getByLabel('Until').fill('2099-05-01T10:30');
    await expectAccessible(page);
    await page.getByRole('button', { name: 'Let it wait' }).press('Enter');
    await page.getByText(/Glue dries until 1 May 2099/u).waitFor();
    await expectAccessible(page);
    await page.locator('body').press('Control+z');
    await page.getByText(/Glue dries until/u).waitFor({ state: 'detached' });
    await page.context().close();
  });

  it('keeps the clock running through a reload, and stops it without a network', async () => {
    const page = await desk.open('/bench', phone);
    await page.getByRole('button', { name: 'Start the clock: Ease the keys, Bench piano, invented' }).tap();
    await expect.poll(async () => (await cardsOf('hours')).length).toBe(1);
    await page.reload();
    const stop = page.getByRole('button', { name: 'Stop the clock' });
    await stop.waitFor();
    await expectAccessible(page);
    await expectNoSidewaysScroll(page);
    await page.context().setOffline(true);
    await stop.tap();
    await page.getByText('kept on this device').waitFor();
    expect((await cardsOf('hours'))[0]?.stoppedAt).toBeNull();
    await page.context().setOffline(false);
    await expect.poll(async () => typeof (await cardsOf('hours'))[0]?.stoppedAt, { timeout: 30_000 }).toBe('string');
    await page.getByText('kept on this device').waitFor({ state: 'detached' });
    await page.context().close();
  });

  it('notes hours afterwards, and refuses what is no time', async () => {
    const page = await desk.open('/bench', tablet);
    await page.getByRole('button', { name: 'Note hours' }).press('Enter');
    const hours = page.getByRole('dialog').getByLabel('Hours', { exact: true });
    await hours.fill('-2');
    await page.getByRole('button', { name: 'Save', exact: true }).press('Enter');
    await page.getByRole('dialog').locator('.field-error').first().waitFor();
    await hours.fill('2:30');
    await page.getByRole('button', { name: 'Save', exact: true }).press('Enter');
    await page.getByText('2.50 h, typed').waitFor();
    await page.context().close();
  });

  it('lists the newest hours, and older ones on being asked', async () => {
    const before = (await cardsOf('hours')).length;
    for (let day = 10; day < 24; day += 1) await desk.call('POST', '/api/shop/cards', { kind: 'hours', pianoId: piano, cycle: 1, jobs: [], hours: 1, on: `2031-03-${String(day)}`, details: { words: '' } });
    const page = await desk.open('/bench', phone);
    await page.getByRole('button', { name: `Show more (12 of ${String(before + 14)})` }).press('Enter');
    await page.getByRole('button', { name: /^Correct: .*10 Mar 2031/u }).waitFor();
    await expectNoSidewaysScroll(page);
    await page.context().close();
  });
});

describe('parts', () => {
  it('puts something into stock, orders it with a price, receives it as one step, and takes that back', async () => {
    const page = await desk.open('/parts', tablet);
    await page.getByRole('button', { name: 'Add to stock' }).press('Enter');
    await page.getByRole('dialog').getByLabel('Name').fill('Felt, invented');
    await page.getByRole('button', { name: 'Save', exact: true }).press('Enter');
    await page.getByRole('rowheader', { name: /Felt, invented/u }).waitFor();
    await page.getByRole('button', { name: 'Write an order' }).press('Enter');
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('From stock list').selectOption({ label: 'Felt, invented' });
    await dialog.getByLabel('How much').fill('5');
    await dialog.getByLabel('Price of the line').fill('12.50');
    await page.getByRole('button', { name: 'Save', exact: true }).press('Enter');
    await dialog.getByText('A price needs the currency it is in.').waitFor();
    await dialog.getByLabel('Currency').fill('EUR');
    await expectAccessible(page);
    await page.getByRole('button', { name: 'Save', exact: true }).press('Enter');
    await page.getByRole('button', { name: 'Is ordered' }).press('Enter');
    await page.getByRole('button', { name: 'Has come: put into stock' }).press('Enter');
    await expect.poll(async () => (await cardsOf('stockMove')).map(({ amount }) => amount)).toEqual([5]);
    await page.getByRole('button', { name: 'Has come: put into stock' }).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: /^Felt, invented: how there came to be 5/u }).press('Enter');
    await page.getByRole('dialog').getByRole('cell', { name: /^\+5/u }).waitFor();
    await expectAccessible(page);
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await page.locator('body').press('Control+z');
    await expect.poll(async () => [(await cardsOf('stockMove')).length, (await cardsOf('purchase'))[0]?.status]).toEqual([0, 'ordered']);
    await expectAccessible(page);
    await page.context().close();
  });
});

describe('people', () => {
  it('are noted, and forgotten for good, by keyboard alone', async () => {
    const page = await desk.open('/people', phone);
    await page.getByRole('button', { name: 'Add a person' }).waitFor();
    await page.keyboard.press('n');
    await page.getByRole('dialog').getByLabel('Name').fill('Somebody, invented');
    await page.getByRole('dialog').getByRole('checkbox', { name: 'Supplier' }).press('Space');
    await expectAccessible(page);
    await page.getByRole('button', { name: 'Save', exact: true }).press('Enter');
    await page.getByRole('heading', { name: 'Somebody, invented' }).waitFor();
    await expectAccessible(page);
    await expectNoSidewaysScroll(page);
    await page.getByRole('button', { name: 'Forget this person' }).press('Enter');
    await page.getByRole('button', { name: 'Forget Somebody, invented' }).press('Enter');
    await expect.poll(async () => (await cardsOf('contact')).map(({ details }) => details)).toEqual([null]);
    await page.context().close();
  });

  it('take a piano on trial and bring it back, by keyboard: its condition before and after, what changed told', async () => {
    const page = await desk.open(`/people?person=${await somebody('Borrower, invented')}`, tablet);
    await page.getByRole('button', { name: 'Lend a piano' }).press('Enter');
    const dialog = page.getByRole('dialog');
    await choose(dialog.getByLabel('Piano', { exact: true }), 'Bench piano');
    await dialog.getByLabel('From').fill('2031-03-01');
    await lookOver(dialog, 'before', '2031-03-01', 'Good', 'no scratch');
    await expectAccessible(page);
    await page.getByRole('button', { name: 'Save', exact: true }).press('Enter');
    await dialog.waitFor({ state: 'detached' });
    const loans = page.getByRole('region', { name: 'Loans for trial' });
    await loans.getByRole('button', { name: /^Correct/u }).press('Enter');
    await dialog.getByLabel('Came back on').fill('2031-03-20');
    await lookOver(dialog, 'after', '2031-02-01', 'Marked', 'scratch on the left');
    await page.getByRole('button', { name: 'Save', exact: true }).press('Enter');
    await dialog.locator('.field-error').first().waitFor();
    expect((await cardsOf('loan'))[0]?.after).toBeNull();
    await dialog.locator('details').filter({ hasText: 'Condition after' }).getByLabel('Looked over on').fill('2031-03-20');
    await page.getByRole('button', { name: 'Save', exact: true }).press('Enter');
    await dialog.waitFor({ state: 'detached' });
    const row = page.getByRole('region', { name: 'Condition before and after' }).getByRole('row', { name: /^Case and legs/u });
    expect((await row.innerText()).replaceAll(/\s+/gu, ' ')).toBe('Case and legs Good: no scratch Marked: scratch on the left ⚠ Changed while it was away');
    await expectAccessible(page);
    await expectNoSidewaysScroll(page);
    await page.context().close();
  });

  it('come to a viewing, arranged by keyboard, which the calendar feed and its file hold', async () => {
    const page = await desk.open(`/people?person=${await somebody('Visitor, invented')}`, phone);
    await page.getByRole('button', { name: 'Arrange a visit' }).press('Enter');
    const dialog = page.getByRole('dialog');
    await choose(dialog.getByLabel('For', { exact: true }), 'Viewing');
    await choose(dialog.getByLabel('Where', { exact: true }), 'At the shop');
    await dialog.getByLabel('Minutes').fill('45');
    await page.getByRole('button', { name: 'Save', exact: true }).press('Enter');
    await dialog.locator('.field-error').first().waitFor();
    await dialog.getByLabel('Begins').fill('2099-05-02T14:00');
    await expectAccessible(page);
    await page.getByRole('button', { name: 'Save', exact: true }).press('Enter');
    await dialog.waitFor({ state: 'detached' });
    await page.getByRole('link', { name: 'All people' }).press('Enter');
    await page.getByRole('link', { name: /Visitor, invented · Viewing/u }).waitFor();
    const file = page.getByRole('link', { name: 'Take the calendar file (.ics)' });
    const address = await file.getAttribute('href') ?? '';
    await page.getByText(address).waitFor();
    const [download] = await Promise.all([page.waitForEvent('download'), file.press('Enter')]);
    expect(download.suggestedFilename()).toBe('wrestplank.ics');
    const feed = await fetch(address);
    expect(feed.headers.get('content-type')).toContain('text/calendar');
    const begins = new Date((await cardsOf('appointment'))[0]?.startsAt ?? '').toISOString().replaceAll(/[-:]|\.\d+/gu, '');
    for (const held of [await feed.text(), await readFile(await download.path(), 'utf8')]) expect(held).toMatch(new RegExp(`BEGIN:VEVENT[\\s\\S]*DTSTART:${begins}[\\s\\S]*END:VEVENT`, 'u'));
    await expectAccessible(page);
    await expectNoSidewaysScroll(page);
    await page.context().close();
  });
});

async function somebody(name: string): Promise<string> {
  return (await desk.call<{ id: string }>('POST', '/api/shop/cards', { kind: 'contact', roles: ['customer'], details: { name } })).id;
}

/** Chooses from a closed list by the letters it begins with. */
async function choose(list: Locator, letters: string): Promise<void> {
  await list.focus();
  await list.page().keyboard.type(letters);
  expect(await list.locator('option:checked').textContent()).toContain(letters);
}

/** Fills in a condition sheet: its day, and how the case was found. */
async function lookOver(dialog: Locator, side: 'before' | 'after', on: string, grade: string, words: string): Promise<void> {
  const sheet = dialog.locator('details').filter({ hasText: `Condition ${side}` });
  if (!(await sheet.evaluate((details) => (details as HTMLDetailsElement).open))) await sheet.locator('summary').press('Enter');
  await sheet.getByLabel('Looked over on').fill(on);
  await choose(sheet.getByRole('combobox', { name: 'Case and legs' }), grade);
  await sheet.getByLabel('Case and legs: what is to be seen').fill(words);
}

describe('the survey of a piano', () => {
  it('asks what the shop wants asked: points reworded, moved, added and left out by keyboard, the focus going along', async () => {
    const page = await desk.open(`/pianos/${piano}/work`, tablet);
    await page.getByText('Survey', { exact: true }).first().click();
    await page.getByRole('button', { name: 'Change what is looked at' }).press('Enter');
    const dialog = page.getByRole('dialog');
    const asks = (): Promise<readonly string[]> => dialog.getByRole('textbox').evaluateAll((fields) => fields.map((field) => (field as HTMLTextAreaElement).value));
    const before = await asks();
    await dialog.getByRole('button', { name: 'Point 3 one up' }).press('Enter');
    await page.keyboard.press('Enter');
    await expect.poll(asks).toEqual([before[2], before[0], before[1], ...before.slice(3)]);
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Point 1 one down');
    await dialog.getByRole('button', { name: 'Leave out point 2' }).press('Enter');
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Leave out point 2');
    await dialog.getByRole('button', { name: 'Add a point' }).press('Enter');
    await page.keyboard.press('Tab');
    await page.keyboard.type('Name board straight?');
    await expectAccessible(page);
    await dialog.getByRole('button', { name: 'Save', exact: true }).press('Enter');
    await dialog.waitFor({ state: 'detached' });
    await page.getByText('Name board straight?').waitFor();
    await page.context().close();
  });

  it.each([tablet, phone])('is accessible and does not scroll sideways, $viewport.width wide', async (look) => {
    const page = await desk.open(`/pianos/${piano}/work`, look);
    await page.getByText('Survey', { exact: true }).first().click();
    await page.getByRole('heading', { level: 2 }).first().waitFor();
    await expectAccessible(page);
    await expectNoSidewaysScroll(page);
    await page.context().close();
  });
});

it('complains of nothing on the console but the network that was taken away', () => {
  expect(desk.complaints.filter((complaint) => !/Failed to load resource|ERR_INTERNET_DISCONNECTED/u.test(complaint))).toEqual([]);
});
