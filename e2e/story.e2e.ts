import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { writeDecades } from './support/decades.ts';
import { fileDesk } from './support/desk.ts';

let piano = '';
const desk = fileDesk({ before: async (dataDir) => { piano = await writeDecades(dataDir, { days: 3, figures: 8 }); } });
const tablet = { viewport: { width: 1024, height: 768 }, timezoneId: 'Europe/Berlin' } as const;
const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, colorScheme: 'dark', timezoneId: 'Europe/Berlin' } as const;

const open = (options: Parameters<typeof desk.open>[1]): Promise<Page> => desk.open(`/pianos/${piano}/story`, options);
const fold = (page: Page, name: RegExp) => page.locator('summary').filter({ hasText: name });

describe('a piano that comes back over forty years', () => {
  it('is told as one line of owners and stays, a gap named and none guessed', async () => {
    const page = await open(tablet);
    await page.locator('.owner-row').filter({ hasText: 'stay 4' }).waitFor();
    const rows = (await page.locator('.owner-row').allInnerTexts()).map((text) => text.replaceAll(/\s+/gu, ' '));
    expect(rows.map((text) => text.slice(0, 60))).toEqual([
      '1926 – 1984 First owner, invented',
      'June 1985 – March 2001 Second owner, invented',
      expect.stringMatching(/^3 Feb 1986 – \d+ Feb 1986 In the shop, stay 1$/u),
      expect.stringMatching(/1997 In the shop, stay 2$/u),
      'March 2001 – 2004 Nobody is noted for this time',
      '2004 – to this day Third owner, invented',
      expect.stringMatching(/2011 In the shop, stay 3$/u),
      expect.stringMatching(/2025 In the shop, stay 4$/u),
    ]);
    await expectAccessible(page);
    await page.context().close();
  });

  it('opens an early stay by keyboard: its figures open, its jobs tell what was written of them', async () => {
    const page = await open(tablet);
    await page.getByRole('button', { name: 'In the shop, stay 2' }).press('Enter');
    const stay = page.locator('#stay-2');
    await stay.getByRole('row', { name: /^Median/u }).waitFor();
    expect(await stay.locator('> summary').evaluate((summary) => summary === document.activeElement)).toBe(true);
    await stay.getByRole('row', { name: /^Median/u }).locator('button.figure').first().press('Enter');
    await page.getByRole('dialog').getByRole('heading', { name: 'Formula' }).waitFor();
    await page.keyboard.press('Escape');
    await stay.locator('summary').filter({ hasText: '2 jobs done' }).press('Enter');
    await stay.locator('summary').filter({ hasText: 'Glue the rib, stay 2' }).press('Enter');
    await stay.getByText('Done: Glue the rib, stay 2').waitFor();
    await expectAccessible(page);
    await page.context().close();
  });

  it('finds one event among all by what is typed, and by kind; every day of the log opens', async () => {
    const page = await open(tablet);
    await fold(page, /Stay 3 .*events/u).waitFor();
    await page.locator('body').press('/');
    await page.keyboard.type('glue the rib stay 1');
    await page.getByText('2 events found.').waitFor();
    await page.getByText('Done: Glue the rib, stay 1').waitFor();
    await page.getByLabel('Find in what happened').fill('a0 53');
    await page.getByText('4 events found.').waitFor();
    expect((await page.locator('.event-list > li').allInnerTexts()).every((text) => /Down weight A0 \(As found\): – → 53\sg/u.test(text))).toBe(true);
    await page.getByLabel('Find in what happened').fill('no such thing');
    await page.getByText('Nothing found.').waitFor();
    await page.getByLabel('Find in what happened').fill('');
    await page.getByLabel('Changes of').selectOption('work');
    await page.getByText(/^\d+ events found\.$/u).waitFor();
    expect(await page.locator('.event-list > li').count()).toBe(12);
    await page.getByLabel('Changes of').selectOption('');
    await fold(page, /Stay 1 .*events/u).press('Enter');
    await fold(page, /^3 February 1986/u).press('Enter');
    await page.getByText('Piano taken in').waitFor();
    await expectAccessible(page);
    await page.context().close();
  });

  it('is read on a phone by touch', async () => {
    const page = await open(phone);
    await page.getByRole('button', { name: 'In the shop, stay 1' }).tap();
    await page.locator('#stay-1').getByRole('row', { name: /^Median/u }).waitFor();
    await expectNoSidewaysScroll(page);
    await fold(page, /Stay 2 .*events/u).tap();
    await fold(page, /^15 September 1997/u).tap();
    await page.getByText('Back in the shop: stay 2 opened').waitFor();
    await expectAccessible(page);
    await expectNoSidewaysScroll(page);
    await page.context().close();
  });

  it('complains of nothing on the console', () => {
    expect(desk.complaints).toEqual([]);
  });
});
