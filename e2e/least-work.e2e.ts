import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { type Desk, fileDesk } from './support/desk.ts';

const desk = fileDesk({ demo: true });

/** Opens the least work of a piano, looks at it once it stands, and closes it. */
async function onLeastWork(piano: string, options: Parameters<Desk['open']>[1], look: (page: Page) => Promise<void>): Promise<void> {
  const page = await desk.open(`/pianos/${piano}/action`, options);
  await page.getByRole('radio', { name: 'Least work' }).check();
  await look(page);
  await page.context().close();
}

/** A piano whose keys are even but for two that rub. */
async function rubbingPiano(): Promise<string> {
  const { id } = await desk.call<{ id: string }>('POST', '/api/pianos', { name: 'Rubbing piano, invented', kind: 'grand', firstMidi: 21, lastMidi: 108 });
  await desk.call('PUT', `/api/pianos/${id}/intents/1`, { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG: 20 });
  const entries = Array.from({ length: 88 }, (_, index) => index + 1).flatMap((key) => {
    const rubs = key === 40 || key === 60 ? 5 : 0;
    return [['downWeightG', 49 + rubs], ['upWeightG', 25 - rubs]].map(([quantity, value]) => ({ quantity, scope: 'key', index: key, repeat: 1, typed: String(value) }));
  });
  await desk.call('POST', `/api/pianos/${id}/readings`, { sendId: '2c0a1d86-5b1e-4d0f-9c55-0f6a0e3f5a44', cycle: 1, state: 'found', locale: 'en', sessionId: null, entries });
  return id;
}

/** What a piano is expected to show once the work is done. */
async function expected(piano: string): Promise<readonly string[]> {
  const { readings } = await desk.call<{ readings: { state: string; index: number; quantity: string }[] }>('GET', `/api/pianos/${piano}/readings?cycle=1`);
  return readings.filter(({ state }) => state === 'planned').map(({ index, quantity }) => `${String(index)} ${quantity}`).sort();
}

describe('the least work', () => {
  it('asks for minutes, answers while they are typed, and gives the jobs to the list of work as one step', async () => {
    const piano = await rubbingPiano();
    await onLeastWork(piano, {}, async (page) => {
      await page.getByText('Put a time to at least one job').waitFor();
      await page.getByLabel('Where friction above the usual sits').selectOption({ label: 'In the key' });
      const ease = page.getByLabel('Ease key bushing', { exact: true });
      await ease.fill('2');
      const total = page.locator('.work-total');
      await expect.poll(() => total.innerText()).toBe('4 min');
      await page.getByLabel('Take the keys off and put them back').fill('20');
      await expect.poll(() => total.innerText()).toBe('24 min');
      await ease.fill('two');
      await page.getByText('The answer waits').waitFor();
      await ease.fill('3');
      await page.getByRole('button', { name: 'That holds', exact: true }).click();
      await expect.poll(() => total.innerText()).toBe('26 min');
      await page.getByRole('button', { name: 'Take these 2 jobs' }).click();
      await page.getByText('All of these jobs stand on the list of work.').waitFor();
      expect(await expected(piano)).toEqual(['40 downWeightG', '40 upWeightG', '60 downWeightG', '60 upWeightG']);
      await page.goto(`${desk.bench.url}/pianos/${piano}/work`);
      await expect.poll(() => page.getByRole('checkbox').count()).toBe(2);
      expect(await page.locator('.work-page').innerText()).toContain('friction −5.0');
      await page.keyboard.press('Control+z');
      await expect.poll(() => page.getByRole('checkbox').count()).toBe(0);
      expect(await expected(piano)).toEqual([]);
    });
  });

  it('proves the plan of the demo, beside the plans made without looking, and opens its figures', async () => {
    await onLeastWork(desk.demo, {}, async (page) => {
      await page.getByText('Proven: by your minutes').waitFor();
      const rows = page.locator('.work-answer tbody tr');
      expect(await rows.count()).toBe(3);
      await page.keyboard.press('n');
      const panel = page.locator('.key-panel');
      await panel.getByText('What to do').waitFor();
      await panel.locator('.figure').first().click();
      await page.getByRole('dialog', { name: /^Least work/u }).waitFor();
      await page.keyboard.press('Escape');
      await expectAccessible(page);
    });
  });

  it('stands on a phone without scrolling sideways', async () => {
    await onLeastWork(desk.demo, { viewport: { width: 390, height: 844 } }, async (page) => {
      await page.locator('.work-total').waitFor();
      await expectNoSidewaysScroll(page);
    });
  });
});
