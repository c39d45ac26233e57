/** From starting the installed and built program on a new folder to its first usable page with the demo piano, against the browser showing an empty page. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { ensureBrowser } from '../scripts/lib/browser.mjs';
import { report, spreadOf } from './measure.mjs';

const RUNS = 5;
const executablePath = await ensureBrowser();
const main = path.resolve(import.meta.dirname, '../dist/cli/main.js');

/** Milliseconds until the piano's name stands on the page. */
async function startOnce() {
  const data = await mkdtemp(path.join(tmpdir(), 'wrestplank-bench-'));
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-background-networking'] });
  const page = await browser.newPage();
  const empty = performance.now();
  await page.goto('about:blank');
  const emptyMs = performance.now() - empty;
  const begun = performance.now();
  const child = spawn(process.execPath, [main, 'serve', '--port', '0', '--data', data, '--demo'], { stdio: ['ignore', 'pipe', 'pipe'] });
  const url = await new Promise((resolve) => {
    let said = '';
    const listen = (text) => {
      said += String(text);
      const found = /http:\/\/127\.0\.0\.1:\d+/u.exec(said)?.[0];
      if (found !== undefined) resolve(found);
    };
    child.stdout.on('data', listen);
    child.stderr.on('data', listen);
  });
  const addressMs = performance.now() - begun;
  await page.goto(url);
  await page.getByRole('heading', { name: 'Demo grand, invented' }).or(page.getByRole('link', { name: 'Demo grand, invented' })).first().waitFor();
  const usableMs = performance.now() - begun;
  child.kill('SIGTERM');
  await once(child, 'close');
  await browser.close();
  await rm(data, { recursive: true, force: true });
  return { emptyMs, addressMs, usableMs };
}

const runs = [];
for (let run = 0; run < RUNS; run += 1) runs.push(await startOnce());
const of = (name) => spreadOf(runs.map((run) => run[name]));
report('cold-start', { unit: 'ms', usable: of('usableMs'), address: of('addressMs'), emptyPage: of('emptyMs'), usableToEmptyPage: of('usableMs').median / of('emptyMs').median });
