import { deflateSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './support/accessible.ts';
import { type Desk, fileDesk } from './support/desk.ts';

const desk = fileDesk({ demo: true });

async function onBelly(options: Parameters<Desk['open']>[1], look: (page: Page) => Promise<void>): Promise<void> {
  const page = await desk.open(`/pianos/${desk.demo}/belly`, options);
  await page.locator('.belly-page').waitFor();
  await look(page);
  await page.context().close();
}

/** A photo as a camera’s file: what makes it a PNG, and bytes. */
const photo = { name: 'board.png', mimeType: 'image/png', buffer: Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), deflateSync('a board')]) };

interface Piece {
  readonly quantity: string;
  readonly typed: string | null;
  readonly state: string;
}
const planned = async (quantity: string): Promise<readonly Piece[]> => {
  const { readings } = await desk.call<{ readings: Piece[] }>('GET', `/api/pianos/${desk.demo}/readings?cycle=1`);
  return readings.filter((one) => one.state === 'planned' && one.quantity === quantity);
};

describe('the belly by keyboard alone', () => {
  it('leads to the strings that lift, and opens the figure to its formula and readings', async () => {
    await onBelly({}, async (page) => {
      await page.keyboard.press('n');
      const panel = page.locator('.note-panel');
      await panel.getByText('Bearing lost').first().waitFor();
      for (let strokes = 0; strokes < 10 && !(await panel.innerText()).includes('Negative bearing'); strokes += 1) await page.keyboard.press('n');
      expect(await panel.innerText()).toMatch(/Negative bearing/u);
      await panel.getByRole('row', { name: /Total angle/u }).getByRole('button').first().focus();
      await page.keyboard.press('Enter');
      const dialog = page.getByRole('dialog', { name: /Total angle/u });
      await dialog.waitFor();
      expect(await dialog.innerText()).toMatch(/atan/u);
      await page.keyboard.press('Escape');
    });
  });

  it('plans a recapping as one step, and undoes it as one', async () => {
    const before = await planned('bridgeHeightUnloadedMm');
    await onBelly({}, async (page) => {
      await page.keyboard.press('v');
      await page.keyboard.press('r');
      const keep = page.getByRole('button', { name: /^Keep as planned/u });
      await keep.waitFor();
      await keep.focus();
      await page.keyboard.press('Enter');
      await expect.poll(async () => (await planned('bridgeHeightUnloadedMm')).length).toBe(88);
      await page.keyboard.press('Control+z');
      await expect.poll(async () => (await planned('bridgeHeightUnloadedMm')).length).toBe(before.length);
    });
  });

  it('puts the stiffness of a push test into the terms', async () => {
    await onBelly({}, async (page) => {
      await page.keyboard.press('v');
      await page.keyboard.press('r');
      for (const [index, [force, gone]] of [['100', '0.1'], ['200', '0.21'], ['300', '0.29']].entries()) {
        await page.getByLabel(`Load ${String(index + 1)} (N)`).fill(force ?? '');
        await page.getByLabel(`Gone down ${String(index + 1)} (mm)`).fill(gone ?? '');
      }
      await page.getByRole('button', { name: 'Put into the terms' }).click();
      await expect.poll(async () => (await desk.call<{ scales: Record<string, { boardStiffnessNPerMm: number }> }>('GET', `/api/pianos/${desk.demo}`)).scales['1']?.boardStiffnessNPerMm).toBeCloseTo(140_000 / 139, 6);
    });
  });
});

describe('what was seen of the belly', () => {
  it('is kept with its photo, shown large, corrected, withdrawn and brought back', async () => {
    await onBelly({}, async (page) => {
      await page.keyboard.press('v');
      await page.keyboard.press('s');
      await page.getByRole('button', { name: 'Note what was seen' }).click();
      await page.getByLabel('Part').selectOption('rib');
      await page.getByLabel('What was seen', { exact: true }).selectOption('separated');
      await page.getByLabel('From key').fill('C4');
      await page.getByLabel('Remark').fill('Gap of a card');
      await page.getByLabel('Choose photos').setInputFiles(photo);
      await page.getByRole('button', { name: 'Show board.png large' }).waitFor();
      await page.getByRole('button', { name: 'Keep', exact: true }).click();
      const item = page.locator('.seen-item').filter({ hasText: 'Gap of a card' });
      await item.waitFor();
      await item.getByRole('button', { name: 'Show board.png large' }).click();
      await page.getByRole('dialog', { name: 'board.png' }).waitFor();
      await page.keyboard.press('Escape');
      await item.getByRole('button', { name: /^Withdraw/u }).click();
      await item.waitFor({ state: 'detached' });
      await page.keyboard.press('Control+z');
      await item.waitFor();
    });
  });

  it('loses nothing typed when the connection is gone, and says that photos need it', async () => {
    await onBelly({}, async (page) => {
      await page.keyboard.press('v');
      await page.keyboard.press('s');
      await page.getByRole('button', { name: 'Note what was seen' }).click();
      await page.getByLabel('Remark').fill('Typed in the cellar');
      await page.context().setOffline(true);
      await page.getByLabel('Choose photos').setInputFiles(photo);
      await page.getByText(/photos need the connection\. What is typed stays/u).waitFor();
      await page.context().setOffline(false);
      await page.reload();
      await page.getByRole('button', { name: 'Note what was seen' }).click();
      expect(await page.getByLabel('Remark').inputValue()).toBe('Typed in the cellar');
    });
  });
});

describe('the Belly page', () => {
  it.each([['light', 1024, 768], ['dark', 390, 844]] as const)('is accessible in %s at %i × %i, every view of it', async (colorScheme, width, height) => {
    await onBelly({ colorScheme, viewport: { width, height } }, async (page) => {
      for (const view of ['b', 'h', 'r', 's']) {
        await page.keyboard.press('v');
        await page.keyboard.press(view);
        await page.locator('.keyboard-and-key, .grid, .recap-scroll, .seen').first().waitFor();
        await expectAccessible(page);
        await expectNoSidewaysScroll(page);
      }
    });
  });
});
