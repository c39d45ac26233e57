/**
 * A room tried in the browser: the invented drawing room opened to be changed, and from a key typed into its temperature (20, 2, 20 … °C)
 * or an arrow that makes its floor of something else until reverberation, notes, levels, what to hang and the drawings stand painted.
 * Beside it the same keys in a bare field of an empty page: what browser and machine need for themselves.
 */
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { ensureBrowser } from '../scripts/lib/browser.mjs';
import { bareTyping, spreads, start, typed, watch } from './in-browser.mjs';

const STEPS = Number(process.env.STEPS ?? 120);
const WARM = 12;
const DIGITS = ['Backspace', '0'];
const ARROWS = ['ArrowDown', 'ArrowUp'];
const AIM_MS = 16;

/** Ends the page on the desk of the first room and answers it. */
async function openDesk(page, url) {
  const { pianos } = await (await fetch(`${url}/api/pianos`)).json();
  await page.goto(`${url}/pianos/${pianos[0].instrument.id}/room`);
  await page.getByRole('button', { name: 'Change or try' }).press('Enter');
  await page.locator('.room-follows .scene').first().waitFor();
}

/** Figures of a room on screen: painted and work, typed and chosen, beside the bare field. */
export async function roomOnScreen() {
  const data = await mkdtemp(path.join(tmpdir(), 'wrestplank-bench-'));
  const bench = await start(data);
  const browser = await chromium.launch({ executablePath: await ensureBrowser(), args: ['--no-sandbox', '--disable-background-networking'] });
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 }, reducedMotion: 'reduce', locale: 'en-GB' });
    await page.addInitScript(watch, { keys: [...DIGITS, ...ARROWS], answer: 'input', plots: '.room-follows .figure' });
    await openDesk(page, bench.url);
    const temperature = page.getByLabel('Temperature (°C)');
    await temperature.fill('20');
    await temperature.press('End');
    await typed(page, WARM, DIGITS);
    const digits = await typed(page, STEPS, DIGITS);
    await page.getByLabel('Floor', { exact: true }).focus();
    await typed(page, WARM, ARROWS);
    const floors = await typed(page, STEPS, ARROWS);
    return figuresOf(digits, floors, await bareTyping(page, WARM, STEPS, DIGITS));
  } finally {
    await browser.close();
    bench.child.kill('SIGTERM');
    await once(bench.child, 'exit');
    await rm(data, { recursive: true, force: true });
  }
}

function figuresOf(digits, floors, bare) {
  const [digit, floor, field] = [spreads(digits), spreads(floors), spreads(bare)];
  const moved = (some) => `${String(some.filter(({ plotsMoved }) => plotsMoved).length)} of ${String(some.length)}`;
  return {
    unit: 'ms; painted: from key to painted frame, the wait for the screen included; work: without that wait',
    typedTemperature: digit, chosenFloor: floor, bareField: field, figuresMoved: { typed: moved(digits), chosen: moved(floors) },
    paintedRatioToBareField: { typed: digit.painted.median / field.painted.median, chosen: floor.painted.median / field.painted.median },
    budget: { medianMs: AIM_MS }, workWithin: digit.work.median <= AIM_MS && floor.work.median <= AIM_MS, paintedWithin: digit.painted.median <= AIM_MS && floor.painted.median <= AIM_MS, bareFieldWithin: field.painted.median <= AIM_MS,
  };
}
