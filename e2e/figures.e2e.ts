import { describe, expect, it } from 'vitest';
import { expectAccessible } from './support/accessible.ts';
import { fileDesk } from './support/desk.ts';

const desk = fileDesk({ demo: true });

describe('a figure opened', () => {
  it('shows formula, readings and sources, and a command line that gives the same figure', async () => {
    const page = await desk.open(`/pianos/${desk.demo}/action`);
    const keyboard = page.getByRole('slider').first();
    await keyboard.focus();
    await page.keyboard.press('Home');
    await expect.poll(() => keyboard.getAttribute('aria-valuetext')).toMatch(/^A0/u);
    const figure = page.locator('button.figure').first();
    const shown = await figure.textContent();
    await figure.click();
    const panel = page.getByRole('dialog');
    await panel.getByRole('heading', { name: 'Formula' }).waitFor();
    await panel.getByText('(DW + UW)/2').waitFor();
    await panel.getByText(/^typed /u).first().waitFor();
    await panel.getByText('Common practice, no source').waitFor();
    await expectAccessible(page);
    const line = (await panel.locator('.command-line').textContent()) ?? '';
    const [, input = '', name = ''] = /^echo '(.*)' \| wrestplank calc (\S+) --json$/u.exec(line) ?? [];
    const answer = await desk.call<Record<string, number>>('POST', `/api/calc/${name}`, JSON.parse(input));
    expect(Object.values(answer).map((value) => value.toFixed(1))).toContain(/-?\d+\.\d/u.exec(shown ?? '')?.[0]);
    await page.keyboard.press('Escape');
    await panel.waitFor({ state: 'detached' });
    await page.context().close();
  });

  it('on the story of the piano leads back to the same figure', async () => {
    const page = await desk.open(`/pianos/${desk.demo}/story`);
    const row = page.getByRole('row', { name: /^Median/u });
    const shown = (await row.locator('button.figure').first().textContent()) ?? '';
    await row.locator('button.figure').first().click();
    const panel = page.getByRole('dialog');
    const line = (await panel.locator('.command-line').textContent()) ?? '';
    const [, input = '', name = ''] = /^echo '(.*)' \| wrestplank calc (\S+) --json$/u.exec(line) ?? [];
    const { median } = await desk.call<{ median: number }>('POST', `/api/calc/${name}`, JSON.parse(input));
    expect(shown).toContain(median.toFixed(1));
    await page.context().close();
  });

  it.each(['light', 'dark'] as const)('has its field explained beside it, with a drawing, %s', async (colorScheme) => {
    const page = await desk.open(`/pianos/${desk.demo}/readings`, { colorScheme });
    await page.getByText('Lever arms', { exact: true }).click();
    await page.getByRole('button', { name: /^Help: /u }).first().click();
    const help = page.getByRole('dialog');
    await help.getByText('Common mistakes:').waitFor();
    await help.getByRole('img', { name: /^Side view of a key/u }).waitFor();
    await expectAccessible(page);
    await page.keyboard.press('Escape');
    await help.waitFor({ state: 'detached' });
    await page.context().close();
  });

  it('lights the key pointed at in every drawing of the page at once', async () => {
    const page = await desk.open(`/pianos/${desk.demo}/action`);
    const scenes = page.locator('svg.scene');
    await expect.poll(() => scenes.count()).toBeGreaterThan(2);
    await page.waitForLoadState('networkidle');
    const box = await scenes.first().boundingBox();
    if (box === null) throw new Error('no drawing on the page');
    await page.mouse.move(box.x + box.width / 2, box.y + 10);
    await expect.poll(async () => (await scenes.count()) - (await scenes.locator('.scene-strip').count())).toBe(0);
    await page.context().close();
  });

  it('complains of nothing on the console', () => {
    expect(desk.complaints).toEqual([]);
  });
});
