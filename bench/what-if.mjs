/**
 * One size tried on a note of a whole scale, in the browser: from the stroke that steps the wire until figures, plots and loads stand
 * painted. Beside it the same stroke on a bare button of an empty page: what browser and machine need for themselves.
 * A plain note, and a wound one with bare ends, whose partials are solved anew.
 */
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { ensureBrowser } from '../scripts/lib/browser.mjs';
import { bareSteps, spreads, start, step, watch } from './in-browser.mjs';
import { report } from './measure.mjs';

const STEPS = 120;
const WARM = 12;

const data = await mkdtemp(path.join(tmpdir(), 'wrestplank-bench-'));
const bench = await start(data);
const browser = await chromium.launch({ executablePath: await ensureBrowser(), args: ['--no-sandbox', '--disable-background-networking'] });
try {
  const { pianos } = await (await fetch(`${bench.url}/api/pianos`)).json();
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 }, reducedMotion: 'reduce' });
  await page.addInitScript(watch);
  const on = async (note) => {
    await page.goto(`${bench.url}/pianos/${pianos[0].instrument.id}/strings`);
    await page.locator('.keyboard-and-key').waitFor();
    await page.keyboard.press('k');
    await page.getByRole('dialog').waitFor();
    await page.keyboard.type(note);
    await page.keyboard.press('Enter');
    const buttons = page.locator('.size-steps').first().getByRole('button');
    await buttons.first().waitFor();
    await step(page, WARM, buttons);
    return step(page, STEPS, buttons);
  };
  const [plain, wound] = [await on('C5'), await on('C2')];

  const bare = await bareSteps(page, WARM, STEPS);

  const [ofPlain, ofWound, floor] = [spreads(plain), spreads(wound), spreads(bare)];
  const moved = (some) => `${String(some.filter(({ plotsMoved }) => plotsMoved).length)} of ${String(some.length)}`;
  report('what-if', {
    unit: 'ms; painted: from stroke to painted frame, the wait for the screen included; work: without that wait',
    plainNote: ofPlain, woundNote: ofWound, bareButton: floor, plotsMoved: { plain: moved(plain), wound: moved(wound) },
    paintedRatioToBareButton: ofPlain.painted.median / floor.painted.median,
    budget: { medianMs: 16 }, workWithin: ofPlain.work.median <= 16 && ofWound.work.median <= 16, paintedWithin: ofPlain.painted.median <= 16 && ofWound.painted.median <= 16, bareButtonWithin: floor.painted.median <= 16,
  });
} finally {
  await browser.close();
  bench.child.kill('SIGTERM');
  await once(bench.child, 'exit');
  await rm(data, { recursive: true, force: true });
}
