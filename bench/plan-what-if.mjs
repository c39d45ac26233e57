/**
 * A roller moved by a tenth of a millimetre in the plan of the touch, in the browser: from the stroke that steps it until front
 * weights, consequences and plots of 88 keys stand painted. Beside it the same stroke on a bare button of an empty page.
 */
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { ensureBrowser } from '../scripts/lib/browser.mjs';
import { bareSteps, spreads, start, step, watch } from './in-browser.mjs';
import { report } from './measure.mjs';

const STEPS = Number(process.env.STEPS ?? 120);
const WARM = 12;

const data = await mkdtemp(path.join(tmpdir(), 'wrestplank-bench-'));
const bench = await start(data);
const browser = await chromium.launch({ executablePath: await ensureBrowser(), args: ['--no-sandbox', '--disable-background-networking'] });
try {
  const { pianos } = await (await fetch(`${bench.url}/api/pianos`)).json();
  const { id } = pianos[0].instrument;
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 }, reducedMotion: 'reduce' });
  await page.addInitScript(watch);
  await page.addInitScript((piano) => { sessionStorage.setItem(`wrestplank.action.view.${piano}`, '"plan"'); }, id);
  await page.goto(`${bench.url}/pianos/${id}/action`);
  await page.locator('.keyboard-and-key').waitFor();
  const buttons = page.locator('.size-steps').first().getByRole('button');
  await buttons.first().waitFor();
  await step(page, WARM, buttons);
  const tried = await step(page, STEPS, buttons);

  const [ofPlan, floor] = [spreads(tried), spreads(await bareSteps(page, WARM, STEPS))];

  report('plan-what-if', {
    unit: 'ms; painted: from stroke to painted frame, the wait for the screen included; work: without that wait',
    plan: ofPlan, bareButton: floor, plotsMoved: `${String(tried.filter(({ plotsMoved }) => plotsMoved).length)} of ${String(tried.length)}`,
    paintedRatioToBareButton: ofPlan.painted.median / floor.painted.median,
    budget: { medianMs: 16 }, workWithin: ofPlan.work.median <= 16, paintedWithin: ofPlan.painted.median <= 16, bareButtonWithin: floor.painted.median <= 16,
  });
} finally {
  await browser.close();
  bench.child.kill('SIGTERM');
  await once(bench.child, 'exit');
  await rm(data, { recursive: true, force: true });
}
