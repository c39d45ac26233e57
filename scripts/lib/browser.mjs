import { existsSync } from 'node:fs';
import { must, run, tool } from './run.mjs';

const INSTALLED = {
  linux: ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome', '/usr/bin/google-chrome-stable', '/usr/bin/microsoft-edge', '/snap/bin/chromium'],
  darwin: [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  win32: [
    'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
  ],
};

/** Path of a browser that stands ready, or undefined: the one named in WRESTPLANK_BROWSER, an installed one, the test library's own. */
export async function findBrowser() {
  const named = process.env.WRESTPLANK_BROWSER;
  if (named) {
    if (!existsSync(named)) throw new Error(`WRESTPLANK_BROWSER names ${named}, and nothing stands there`);
    return named;
  }
  const installed = (INSTALLED[process.platform] ?? []).find((path) => existsSync(path));
  if (installed !== undefined) return installed;
  const { chromium } = await import('playwright-core');
  const own = chromium.executablePath();
  return existsSync(own) ? own : undefined;
}

/** Finds a browser, or installs one: from the system's packages where that is allowed, else the test library's own. Fails loudly. */
export async function ensureBrowser() {
  const found = await findBrowser();
  if (found !== undefined) return found;
  if (process.platform === 'linux' && existsSync('/usr/bin/apt-get') && process.getuid?.() === 0) {
    await run('apt-get', ['update', '-qq']);
    await run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium']);
  } else {
    await must(tool('playwright-core'), ['install', 'chromium']);
  }
  const now = await findBrowser();
  if (now === undefined) throw new Error('No Chromium, Chrome or Edge found and none could be installed. Install one, or name it in WRESTPLANK_BROWSER.');
  return now;
}
