/**
 * A figure typed into the grid, in the browser: from the stroke that takes it until balance, friction and all plots stand painted.
 * Beside it the strokes that only type, and the same in a bare input on an empty page: what browser and machine need for themselves.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { ensureBrowser } from '../scripts/lib/browser.mjs';
import { report, spreadOf } from './measure.mjs';

const FIGURES = 200;
const WARM = 12;
/** Pause between strokes: some fifteen a second, faster than a hand, so that the store's own work on a figure is part of the load but not piled up. */
const PAUSE_MS = 65;
const dist = process.env.WRESTPLANK_DIST ?? path.resolve(import.meta.dirname, '../dist');

/** Starts the built program on a folder of its own and waits until its store is open. */
async function start(data) {
  const child = spawn(process.execPath, [path.join(dist, 'cli/main.js'), 'serve', '--port', '0', '--data', data], { stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (text) => { said += String(text); });
  for (const until = Date.now() + 90_000; Date.now() < until; ) {
    const url = /http:\/\/127\.0\.0\.1:\d+/u.exec(said)?.[0];
    if (url !== undefined && (await fetch(`${url}/api/health`).then(({ ok }) => ok, () => false))) return { child, url };
    await new Promise((resolve) => { setTimeout(resolve, 100); });
  }
  throw new Error(`the program did not start: ${said}`);
}

async function post(url, body) {
  const response = await fetch(url, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) });
  if (!response.ok) throw new Error(await response.text());
  return response.json();
}

/**
 * In the page: notes of every stroke when its frame was painted, and how much of that was work:
 * the handlers up to the last listener, and the frame from its first callback to its end. The rest is waiting for the screen's next frame.
 */
function watch() {
  const noted = (window.noted = []);
  // A plot that is not in view counts as none.
  const drawn = () => [...document.querySelectorAll('.live-plots svg')].filter((plot) => plot.clientHeight > 100).flatMap((plot) => [...plot.querySelectorAll('path')].map((line) => line.getAttribute('d'))).join();
  addEventListener('keydown', (event) => {
    const begun = performance.now();
    const before = drawn();
    const reading = performance.now() - begun;
    const stroke = { key: event.key };
    addEventListener('keydown', () => { stroke.handledMs = performance.now() - begun - reading; }, { once: true });
    requestAnimationFrame(() => {
      const frame = performance.now();
      const { port1, port2 } = new MessageChannel();
      // The message comes after the frame's own callbacks, layout and paint.
      port1.onmessage = () => {
        const end = performance.now();
        stroke.paintedMs = end - event.timeStamp - reading;
        stroke.workMs = (stroke.handledMs ?? 0) + end - frame;
        stroke.plotsMoved = drawn() !== before;
        noted.push(stroke);
      };
      port2.postMessage(0);
    });
  }, true);
}

/** Types figures down a column, one commit a row; answers what was noted of each stroke. */
async function typeFigures(page, count, keys, from = 44) {
  for (let typed = 0; typed < count; typed += 1) {
    if (typed % keys === 0 && typed > 0) await page.keyboard.press('Control+Home');
    const text = String(from + ((typed * 7 + Math.floor(typed / keys)) % 12));
    for (const stroke of [...text, 'Enter']) {
      await page.keyboard.press(stroke);
      await page.waitForTimeout(PAUSE_MS);
    }
  }
  await page.waitForTimeout(300);
  return page.evaluate(() => window.noted.splice(0));
}

const data = await mkdtemp(path.join(tmpdir(), 'wrestplank-bench-'));
const bench = await start(data);
const browser = await chromium.launch({ executablePath: await ensureBrowser(), args: ['--no-sandbox', '--disable-background-networking'] });
try {
  const { id } = await post(`${bench.url}/api/pianos`, { name: 'Bench grand', kind: 'grand' });
  await post(`${bench.url}/api/pianos/${id}/sessions`, { cycle: 1, state: 'found', stepG: 1 });
  const pair = (state, lift) => Array.from({ length: 88 }, (_, index) => [['downWeightG', 50 + lift], ['upWeightG', 22 + (index % 5)]].map(([quantity, typed]) => ({ quantity, scope: 'key', index: index + 1, typed: String(typed) }))).flat();
  for (const [state, lift] of [['found', 9], ['finished', 0]]) await post(`${bench.url}/api/pianos/${id}/readings`, { cycle: 1, state, entries: pair(state, lift) });

  const page = await browser.newPage({ viewport: { width: 1280, height: 900 }, reducedMotion: 'reduce' });
  await page.addInitScript(watch);
  await page.goto(`${bench.url}/pianos/${id}/readings`);
  await page.locator('.grid tr[aria-rowindex="2"] td[aria-colindex="2"]').click();
  await typeFigures(page, WARM, 88, 60);
  await page.keyboard.press('Control+Home');
  await page.waitForTimeout(300);
  await page.evaluate(() => window.noted.splice(0));
  const strokes = await typeFigures(page, FIGURES, 88);

  await page.goto('about:blank');
  await page.setContent('<input autofocus>');
  await page.evaluate(watch);
  await page.locator('input').focus();
  await typeFigures(page, WARM, 88);
  const bare = await typeFigures(page, FIGURES, 88);

  const commits = strokes.filter(({ key }) => key === 'Enter');
  const typing = strokes.filter(({ key }) => key.length === 1);
  const spreads = (some) => ({ painted: spreadOf(some.map(({ paintedMs }) => paintedMs)), work: spreadOf(some.map(({ workMs }) => workMs)) });
  const [taken, floor] = [spreads(commits), spreads(bare)];
  const within = ({ median, p95 }) => median <= 16 && p95 <= 50;
  report('keystroke', {
    unit: 'ms; painted: from stroke to painted frame, the wait for the screen included; work: without that wait',
    figureTaken: taken, characterTyped: spreads(typing), bareInput: floor,
    plotsMoved: `${String(commits.filter(({ plotsMoved }) => plotsMoved).length)} of ${String(commits.length)}`,
    paintedRatioToBareInput: taken.painted.median / floor.painted.median,
    budget: { medianMs: 16, p95Ms: 50 }, paintedWithin: within(taken.painted), workWithin: within(taken.work), bareInputWithin: within(floor.painted),
  });
} finally {
  await browser.close();
  bench.child.kill('SIGTERM');
  await once(bench.child, 'exit');
  await rm(data, { recursive: true, force: true });
}
