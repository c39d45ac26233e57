import { type ChildProcess, spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

const script = fileURLToPath(new URL('./open-child.mjs', import.meta.url));

/** A process of its own on a data folder, and what it has said so far. */
export interface Child {
  readonly process: ChildProcess;
  readonly lines: readonly string[];
  /** Resolves with the first line that begins so. @throws Error when the process ends before it says that. */
  said(start: string): Promise<string>;
  /** Resolves once it has said of so many readings that they were acknowledged. */
  wrote(count: number): Promise<void>;
  /** Ends it as a power cut would, and resolves once it is gone and all it said was read. */
  kill(): Promise<void>;
}

/** Starts a process that opens a data folder and, given an instrument, writes there until it is killed. */
export function startChild(...given: readonly string[]): Child {
  const child = spawn(process.execPath, [script, ...given], { stdio: ['ignore', 'pipe', 'inherit'] });
  const lines: string[] = [];
  const reader = createInterface({ input: child.stdout }).on('line', (line) => lines.push(line));
  const ended = Promise.all([new Promise((resolve) => child.once('exit', resolve)), new Promise((resolve) => reader.once('close', resolve))]);
  const once = <T>(look: () => T | undefined, what: string): Promise<T> => new Promise((resolve, reject) => {
    const check = (): void => {
      const seen = look();
      if (seen !== undefined) resolve(seen);
    };
    check();
    reader.on('line', check);
    void ended.then(() => { reject(new Error(`it ended without saying ${what}, but: ${lines.slice(0, 3).join(' | ')}`)); });
  });
  return {
    process: child,
    lines,
    said: (start) => once(() => lines.find((line) => line.startsWith(start)), start),
    wrote: async (count) => {
      await once(() => (lines.filter((line) => line.startsWith('wrote ')).length >= count ? count : undefined), `${String(count)} readings`);
    },
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
    },
  };
}
