import { type Browser, chromium } from 'playwright-core';
import { findBrowser } from '../../scripts/lib/browser.mjs';

/** Starts the browser that stands ready on this machine; without one the tests fail, they do not skip. */
export async function launchBrowser(): Promise<Browser> {
  const executablePath = await findBrowser();
  if (executablePath === undefined) throw new Error('No Chromium, Chrome or Edge was found. Install one, or name it in WRESTPLANK_BROWSER.');
  return await chromium.launch({
    executablePath,
    args: ['--no-sandbox', '--disable-background-networking', '--disable-component-update', '--disable-default-apps', '--no-first-run'],
  });
}
