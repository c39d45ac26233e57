import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { cp, mkdtemp, rename, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { inject } from 'vitest';

/** The build under test: `dist/`, unless WRESTPLANK_DIST names another. */
const dist = process.env['WRESTPLANK_DIST'] ?? fileURLToPath(new URL('../../dist', import.meta.url));
const main = path.join(dist, 'cli/main.js');
const STARTED_WITHIN_MS = 90_000;

export interface RunningBench {
  readonly url: string;
  /** Ends the program and starts it again on the same data and the same port. */
  restart(): Promise<void>;
  /** Ends the program and leaves it ended. */
  stop(): Promise<void>;
  /** Ends the program and takes its data folder away. */
  close(): Promise<void>;
}

export interface BenchOptions {
  /** The demo is in the data of the program. */
  readonly demo?: boolean;
  /** Writes into the data folder before the program starts on it. */
  readonly before?: (dataDir: string) => Promise<void>;
}

/** Starts the built program on a data folder of its own, on any free port of this machine. */
export async function startBench({ demo = false, before = () => Promise.resolve() }: BenchOptions = {}): Promise<RunningBench> {
  const dataDir = await mkdtemp(path.join(tmpdir(), 'wrestplank-e2e-'));
  if (demo) await cp(await demoFolder(), dataDir, { recursive: true });
  await before(dataDir);
  let running = await start(dataDir, '0', demo);
  const { url } = running;
  const stop = async (): Promise<void> => {
    await end(running.child);
  };
  return {
    url,
    stop,
    restart: async () => {
      await stop();
      running = await start(dataDir, new URL(url).port, false);
    },
    close: async () => {
      await stop();
      await rm(dataDir, { recursive: true, force: true });
    },
  };
}

/** A data folder that holds the demo, written by the program once for all test files, which run one after another. */
async function demoFolder(): Promise<string> {
  const folder = inject('demoFolder');
  if (!existsSync(folder)) {
    const written = `${folder}-begun`;
    await end((await start(written, '0', true)).child);
    await rename(written, folder);
  }
  return folder;
}

async function start(dataDir: string, port: string, demo: boolean): Promise<{ readonly child: ChildProcess; readonly url: string }> {
  const child = spawn(process.execPath, [main, 'serve', '--port', port, '--data', dataDir, ...(demo ? ['--demo'] : [])], { stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  const url = await new Promise<string>((resolve, reject) => {
    const timer = setTimeout(() => { reject(new Error(`the program did not say its address:\n${said}`)); }, STARTED_WITHIN_MS);
    const hear = (text: Buffer): void => {
      said += String(text);
      const found = /http:\/\/127\.0\.0\.1:\d+/u.exec(said)?.[0];
      if (found === undefined) return;
      clearTimeout(timer);
      resolve(found);
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.once('exit', (code) => { reject(new Error(`the program ended with ${String(code)}:\n${said}`)); });
  });
  await waitForStore(url, demo);
  return { child, url };
}

/** The pages are served while the store opens; tests begin when it has. */
async function waitForStore(url: string, demo: boolean): Promise<void> {
  for (const until = Date.now() + STARTED_WITHIN_MS; Date.now() < until; ) {
    const health = await fetch(`${url}/api/health`).then((response) => (response.ok ? (response.json() as Promise<{ demo: boolean }>) : undefined), () => undefined);
    if (health !== undefined && (!demo || health.demo)) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error('the store did not open in time');
}

async function end(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const ended = once(child, 'exit');
  child.kill('SIGTERM');
  const timer = setTimeout(() => child.kill('SIGKILL'), 15_000);
  await ended;
  clearTimeout(timer);
}
