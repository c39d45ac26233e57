import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { launchBrowser } from './browser.ts';
import { type BenchOptions, type RunningBench, startBench } from './server.ts';

/** The program, a browser, and pages to open in it. */
export interface Desk {
  readonly bench: RunningBench;
  readonly browser: Browser;
  /** Opens a page of the program in a window of its own, with storage of its own. */
  open(address: string, options?: BrowserContextOptions): Promise<Page>;
  /** What pages said went wrong since the desk was set up: thrown errors, and errors on the console. */
  readonly complaints: string[];
  /** Calls a route of the API. */
  call<T>(method: string, address: string, body?: unknown): Promise<T>;
  /** Id of the demo's first piano. */
  demoPiano(): Promise<string>;
  close(): Promise<void>;
}

/** The desk of a test file: what a desk has, once its tests run. */
export interface FileDesk extends Omit<Desk, 'demoPiano' | 'close'> {
  /** Id of the demo's first piano. */
  readonly demo: string;
}

/** Sets a desk up before the tests of a file, lays on it what they need, and closes it after them. */
export function fileDesk(options: BenchOptions = {}, lay: () => Promise<void> = () => Promise.resolve()): FileDesk {
  let standing: Desk | undefined;
  let demo = '';
  const desk = (): Desk => {
    if (standing === undefined) throw new Error('the desk is set up when the tests begin');
    return standing;
  };
  beforeAll(async () => {
    standing = await setUpDesk(options);
    if (options.demo === true) demo = await standing.demoPiano();
    await lay();
  });
  afterAll(async () => {
    await standing?.close();
  });
  return {
    get bench() { return desk().bench; },
    get browser() { return desk().browser; },
    get complaints() { return desk().complaints; },
    get demo() { return demo; },
    open: (...asked) => desk().open(...asked),
    call: (...asked) => desk().call(...asked),
  };
}

/** Sets a desk up; whoever does so closes it. */
export async function setUpDesk(options: BenchOptions = {}): Promise<Desk> {
  const bench = await startBench(options);
  const browser = await launchBrowser();
  const complaints: string[] = [];
  const call = async <T>(method: string, address: string, body?: unknown): Promise<T> => {
    const response = await fetch(bench.url + address, { method, ...(body === undefined ? {} : { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } }) });
    if (!response.ok) throw new Error(`${method} ${address}: ${String(response.status)} ${await response.text()}`);
    return (await response.json()) as T;
  };
  return {
    bench,
    browser,
    complaints,
    call,
    open: async (address, contextOptions = {}) => {
      const context = await browser.newContext({ locale: 'en-GB', viewport: { width: 1280, height: 900 }, reducedMotion: 'reduce', ...contextOptions });
      const page = await context.newPage();
      page.on('pageerror', (error) => complaints.push(`${page.url()}: ${error.message}`));
      page.on('console', (message) => {
        if (message.type() === 'error') complaints.push(`${page.url()}: ${message.text()}`);
      });
      await page.goto(bench.url + address);
      await page.locator('main h1, .piano-head h1').first().waitFor();
      return page;
    },
    demoPiano: async () => {
      const { pianos } = await call<{ pianos: { instrument: { id: string; demo: boolean } }[] }>('GET', '/api/pianos');
      const demo = pianos.find(({ instrument }) => instrument.demo);
      if (demo === undefined) throw new Error('the demo is not there');
      return demo.instrument.id;
    },
    close: async () => {
      await browser.close();
      await bench.close();
    },
  };
}
