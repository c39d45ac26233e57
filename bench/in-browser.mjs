/** Shared by the benchmarks in a browser: the built program with the invented grand, and what one press of Enter takes until its frame is painted. */
import { spawn } from 'node:child_process';
import path from 'node:path';
import { spreadOf } from './measure.mjs';

const dist = process.env.WRESTPLANK_DIST ?? path.resolve(import.meta.dirname, '../dist');
const PAUSE_MS = 65;

/** Starts the built program with the invented grand and waits until it is there. */
export async function start(data) {
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

/**
 * In the page: of every press of one of `keys` when its frame was painted, how much of that was work, and whether the plots moved.
 * `answer` is the event the page answers to; `plots` the lines that are to move.
 */
export function watch({ keys = ['Enter'], answer = 'click', plots = '.key-plots path' } = {}) {
  const noted = (window.noted = []);
  const drawn = () => [...document.querySelectorAll(plots)].map((line) => line.getAttribute('d') ?? line.textContent).join();
  addEventListener('keydown', (event) => {
    if (!keys.includes(event.key)) return;
    const begun = performance.now();
    const before = drawn();
    const reading = performance.now() - begun;
    const stroke = {};
    addEventListener(answer, () => { stroke.handledMs = performance.now() - begun - reading; }, { once: true });
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
export async function step(page, count, buttons) {
  for (let press = 0; press < count; press += 1) {
    await buttons.nth(press % 4 < 2 ? 1 : 0).focus();
    await page.keyboard.press('Enter');
    await page.waitForTimeout(PAUSE_MS);
  }
  await page.waitForTimeout(300);
  return page.evaluate(() => window.noted.splice(0));
}

/** Types the keys in turn into a field that has the focus. */
export async function typed(page, count, keys) {
  for (let press = 0; press < count; press += 1) {
    await page.keyboard.press(keys[press % keys.length]);
    await page.waitForTimeout(PAUSE_MS);
  }
  await page.waitForTimeout(300);
  return page.evaluate(() => window.noted.splice(0));
}

/** Spreads of the painted frame, wait for the screen included, and of the work alone. */
export const spreads = (some) => ({ painted: spreadOf(some.map(({ paintedMs }) => paintedMs)), work: spreadOf(some.map(({ workMs }) => workMs)) });

/** The same strokes on a bare button of an empty page: what browser and machine need for themselves. */
export async function bareSteps(page, warm, count) {
  await page.goto('about:blank');
  await page.setContent('<button>−</button><button>+</button><output>0</output>');
  await page.evaluate(watch);
  await page.evaluate(() => { for (const button of document.querySelectorAll('button')) button.addEventListener('click', () => { const out = document.querySelector('output'); out.textContent = String(Number(out.textContent) + 1); }); });
  const buttons = page.getByRole('button');
  await step(page, warm, buttons);
  return step(page, count, buttons);
}

/** The same keys typed into a bare field of an empty page, which copies what stands in it. */
export async function bareTyping(page, warm, count, keys) {
  await page.goto('about:blank');
  await page.setContent('<input value="20"><output>20</output>');
  await page.evaluate(watch, { keys, answer: 'input', plots: 'output' });
  await page.evaluate(() => { const field = document.querySelector('input'); field.addEventListener('input', () => { document.querySelector('output').textContent = field.value; }); });
  await page.locator('input').focus();
  await page.keyboard.press('End');
  await typed(page, warm, keys);
  return typed(page, count, keys);
}
