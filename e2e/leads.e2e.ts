import type { Page } from 'playwright-core';
import { afterAll, describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { type Desk, fileDesk } from './support/desk.ts';

interface Kept {
  readonly index: number;
  readonly quantity: string;
  readonly scope: string;
  readonly value: number | null;
  readonly state: string;
}

const desk = fileDesk({ demo: true }, async () => {
  await noteLeads();
});
const RECKONED = { timeout: 120_000 };
/** Keys of the middle that get leads noted here. */
const KEYS = [40, 41, 42, 43, 44, 45];

const readings = async (state: string): Promise<readonly Kept[]> => (await desk.call<{ readings: Kept[] }>('GET', `/api/pianos/${desk.demo}/readings?cycle=1`)).readings.filter((one) => one.state === state);

/** Notes of six keys the sizes and one invented lead each: as far forward as 170 mm, less where the key is light. */
async function noteLeads(): Promise<void> {
  const found = await readings('found');
  const valueOf = (quantity: string, index: number, scope: string): number => found.find((one) => one.quantity === quantity && one.index === index && one.scope === scope)?.value ?? expect.fail(quantity);
  const entry = (quantity: string, index: number, value: number, scope = 'key') => ({ quantity, scope, index, typed: String(value) });
  const entries = [
    ...[0, 1].flatMap((colour) => [entry('keyWidthMm', colour, 13, 'colour'), entry('keyFrontLengthMm', colour, valueOf('keyFrontMm', colour, 'colour') + 13, 'colour')]),
    ...KEYS.flatMap((key) => [entry('lead1PositionMm', key, Math.min(150, Math.max(60, 10 * Math.round(valueOf('frontWeightG', key, 'key'))))), entry('lead1DiameterMm', key, 12.7)]),
  ];
  await desk.call('POST', `/api/pianos/${desk.demo}/readings`, { cycle: 1, state: 'found', sessionId: null, entries });
}

afterAll(() => {
  expect(desk.complaints).toEqual([]);
});

async function onLeads(options: Parameters<Desk['open']>[1], look: (page: Page) => Promise<void>): Promise<void> {
  const page = await desk.open(`/pianos/${desk.demo}/action`, options);
  await page.locator('.action-page').waitFor();
  await page.getByRole('radio', { name: 'Leads', exact: true }).focus();
  await page.keyboard.press('Space');
  await page.locator('.leads').waitFor();
  await look(page);
  await page.context().close();
}

const noted = async (): Promise<readonly string[]> => (await readings('planned')).filter(({ quantity }) => quantity.startsWith('lead')).map(({ index, quantity, value }) => `${String(index)} ${quantity} ${String(value)}`).sort();

describe('leads of the keys', () => {
  it('are worked out by keyboard alone, kept as planned in one step, drilled after a sheet, and undone in one', async () => {
    await onLeads({}, async (page) => {
      await page.getByRole('button', { name: 'Work out the leads' }).focus();
      await page.keyboard.press('Enter');
      const result = page.locator('section[aria-labelledby=leads-result]');
      await result.waitFor(RECKONED);
      expect(await result.innerText()).toMatch(/of \d+ keys meet their front weight; proven for \d+ of \d+/u);
      expect(await noted()).toEqual([]);
      const ways = page.getByRole('table', { name: 'Other ways, and what each counts as' });
      await page.getByText('Counted as the answer is').waitFor(RECKONED);
      expect(await ways.getByRole('row').nth(1).innerText()).toMatch(/^The answer/u);
      expect(await ways.getByRole('row').count()).toBeGreaterThan(2);
      await expectAccessible(page);
      await result.getByRole('button', { name: /Keep as planned/u }).focus();
      await page.keyboard.press('Enter');
      await expect.poll(async () => (await noted()).length).toBeGreaterThan(2);
      const sheet = await fetch(`${desk.bench.url}/api/pianos/${desk.demo}/sheet.pdf?sheet=drilling&locale=en`);
      expect([sheet.status, sheet.headers.get('content-type')]).toEqual([200, 'application/pdf']);
      await page.keyboard.press('Control+z');
      await expect.poll(noted).toEqual([]);
    });
    const refused = await fetch(`${desk.bench.url}/api/pianos/${desk.demo}/sheet.pdf?sheet=drilling&locale=en`);
    expect([refused.status, await refused.text()]).toEqual([422, expect.stringContaining('No lead is noted as planned')]);
  }, 240_000);

  it('say that setting them toward the balance may be patented, and open a figure to its formula', async () => {
    await onLeads({}, async (page) => {
      await page.getByRole('radio', { name: 'Least inertia' }).check();
      await page.getByText(/may be covered by patents/u).waitFor();
      await page.getByRole('button', { name: 'Work out the leads' }).click();
      await page.locator('section[aria-labelledby=leads-result]').waitFor(RECKONED);
      await page.locator('.key-panel .figure').first().click();
      expect(await page.getByRole('dialog').innerText()).toMatch(/min Σ I\/a²/u);
    });
  }, 240_000);

  it('refuse a field by name, and fit a phone and the dark', async () => {
    await onLeads({ viewport: { width: 390, height: 844 }, colorScheme: 'dark' }, async (page) => {
      await page.getByRole('button', { name: 'Change what holds for leads' }).click();
      await page.getByLabel('Drills and leads of the shop (mm)').fill('9.5; wide');
      await page.getByRole('button', { name: 'That holds' }).click();
      await page.getByText('One field needs another look').waitFor();
      await expectAccessible(page);
      await expectNoSidewaysScroll(page);
    });
  }, 240_000);
});

describe('movement of a key', () => {
  it('is drawn, stepped by keyboard, and agrees with the levers where it was measured', async () => {
    const page = await desk.open(`/pianos/${desk.demo}/action`);
    await page.getByRole('radio', { name: 'Movement' }).check();
    await page.locator('.movement .stroke svg').first().waitFor();
    const travel = page.getByLabel('Key travel');
    expect(await page.locator('.stroke').innerText()).toMatch(/Here the key does not drive the hammer/u);
    await travel.focus();
    for (let step = 0; step < 12; step += 1) await page.keyboard.press('ArrowRight');
    expect(await travel.getAttribute('aria-valuetext')).toMatch(/the jack drives the hammer/u);
    expect(await page.locator('.movement').innerText()).toMatch(/Ratio of the levers ([\d.]+)\. At the measured position this model gives \1: 0\.0\s% from it/u);
    await page.getByRole('button', { name: 'To let-off' }).press('Enter');
    expect(await travel.getAttribute('aria-valuetext')).toMatch(/let off, nothing carries the hammer/u);
    await expectAccessible(page);
    await page.context().close();
  }, 120_000);

  it('says what is to be measured, and how, before anything is drawn', async () => {
    const { id } = await desk.call<{ id: string }>('POST', '/api/pianos', { name: 'Unmeasured grand, invented', kind: 'grand', firstMidi: 21, lastMidi: 108 });
    const page = await desk.open(`/pianos/${id}/action`);
    await page.getByRole('radio', { name: 'Movement' }).check();
    await page.locator('.movement').waitFor();
    expect(await page.locator('.key-panel').innerText()).toMatch(/To be measured first.*Height of the capstan above the key bed, at half stroke.*Key pressed half way/su);
    await expectAccessible(page);
    await page.context().close();
  }, 120_000);
});
