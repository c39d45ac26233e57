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
  /** Ends it as a power cut would, and resolves once it is gone and all it said was read. */
  kill(): Promise<void>;
}

/** Starts a process that opens a data folder and, given an instrument, writes there until it is killed. */
export function startChild(...given: readonly string[]): Child {
  const child = spawn(process.execPath, [script, ...given], { stdio: ['ignore', 'pipe', 'inherit'] });
  const lines: string[] = [];
  const reader = createInterface({ input: child.stdout }).on('line', (line) => lines.push(line));
  const ended = Promise.all([new Promise((resolve) => child.once('exit', resolve)), new Promise((resolve) => reader.once('close', resolve))]);
  return {
    process: child,
    lines,
    said: (start) => new Promise((resolve, reject) => {
      const look = (): void => {
        const line = lines.find((one) => one.startsWith(start));
        if (line !== undefined) resolve(line);
      };
      look();
      reader.on('line', look);
      void ended.then(() => reject(new Error(`it ended without saying "${start}", but: ${lines.slice(0, 3).join(' | ')}`)));
    }),
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
    },
  };
}
