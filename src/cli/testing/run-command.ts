import { type ChildProcess, spawn } from 'node:child_process';
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';

const main = fileURLToPath(new URL('../../../dist/cli/main.js', import.meta.url));

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Starts the built command as a person's shell would, in English unless told otherwise. */
export function startCommand(words: readonly string[], environment: Readonly<Record<string, string>> = {}): ChildProcess {
  const { WRESTPLANK_DATABASE_URL: _url, WRESTPLANK_DATA: _data, ...inherited } = process.env;
  const child = spawn(process.execPath, [main, ...words], { env: { ...inherited, LC_ALL: 'C', ...environment }, stdio: 'pipe' });
  running.add(child);
  child.once('close', () => running.delete(child));
  return child;
}

const running = new Set<ChildProcess>();

/** Ends what a test that failed has left running. */
export async function endCommands(): Promise<void> {
  await Promise.all([...running].map((child) => new Promise((resolve) => child.once('close', resolve).kill('SIGKILL'))));
}

/** Runs the built command to its end on some standard input. */
export async function runCommand(words: readonly string[], input: string | Uint8Array = '', environment: Readonly<Record<string, string>> = {}): Promise<Ran> {
  const child = startCommand(words, environment);
  const { stdin, stdout, stderr } = child;
  if (stdin === null || stdout === null || stderr === null) throw new Error('the command was started without pipes');
  stdin.on('error', () => undefined);
  stdin.end(input);
  const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
  const [out, err, code] = await Promise.all([text(stdout), text(stderr), ended]);
  return { code, out, err };
}
