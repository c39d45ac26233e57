/**
 * One size tried on a note of a whole scale, in the browser: from the stroke that steps the wire until figures, plots and loads stand
 * painted. Beside it the same stroke on a bare button of an empty page: what browser and machine need for themselves.
 * A plain note, and a wound one with bare ends, whose partials are solved anew.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { ensureBrowser } from '../scripts/lib/browser.mjs';
import { report, spreadOf } from './measure.mjs';

const STEPS = 120;
const WARM = 12;
const PAUSE_MS = 65;
const dist = process.env.WRESTPLANK_DIST ?? path.resolve(import.meta.dirname, '../dist');

/** Starts the built program with the invented grand and waits until it is there. */
async function start(data) {
  const child = spawn(process.execPath, [path.join(dist, 'cli/main.js'), 'serve', '--demo', '--port', '0', '--data', data], { stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (text) => { said += String(text); });
  for (const until = Date.now() + 90_000; Date.now() < until; ) {
    const url = /http:\/\/127\.0\.0\.1:\d+/u.exec(said)?.[0];
    const health = url === undefined ? undefined : await fetch(`${url}/api/health`).then((answer) => (answer.ok ? answer.json() : undefined), () => undefined);
    if (health?.demo === true) return { child, url };
    await new Promise((resolve) => { setTimeout(resolve, 100); });
  }
  throw new Error(`the program did not start: ${said}`);
}

/** In the page: of every press of Enter when its frame was painted, how much of that was work, and whether the plots moved. */
function watch() {
  const noted = (window.noted = []);
  const drawn = () => [...document.querySelectorAll('.key-plots path')].map((line) => line.getAttribute('d')).join();
  addEventListener('keydown', (event) => {
    if (event.key !== 'Enter') return;
    const begun = performance.now();
    const before = drawn();
    const reading = performance.now() - begun;
    const stroke = {};
    addEventListener('click', () => { stroke.handledMs = performance.now() - begun - reading; }, { once: true });
    requestAnimationFrame(() => {
      const frame = performance.now();
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => {
        const end = performance.now();
        noted.push({ ...stroke, paintedMs: end - event.timeStamp - reading, workMs: (stroke.handledMs ?? 0) + end - frame, plotsMoved: drawn() !== before });
      };
      port2.postMessage(0);
    });
  }, true);
}

/** Presses Enter on one of two buttons after the other, two steps up and two down. */
async function step(page, count, buttons) {
  for (let press = 0; press < count; press += 1) {
    await buttons.nth(press % 4 < 2 ? 1 : 0).focus();
    await page.keyboard.press('Enter');
    await page.waitForTimeout(PAUSE_MS);
  }
  await page.waitForTimeout(300);
  return page.evaluate(() => window.noted.splice(0));
}

const spreads = (some) => ({ painted: spreadOf(some.map(({ paintedMs }) => paintedMs)), work: spreadOf(some.map(({ workMs }) => workMs)) });

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

  await page.goto('about:blank');
  await page.setContent('<button>−</button><button>+</button><output>0</output>');
  await page.evaluate(watch);
  await page.evaluate(() => { for (const button of document.querySelectorAll('button')) button.addEventListener('click', () => { const out = document.querySelector('output'); out.textContent = String(Number(out.textContent) + 1); }); });
  const bareButtons = page.getByRole('button');
  await step(page, WARM, bareButtons);
  const bare = await step(page, STEPS, bareButtons);

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
