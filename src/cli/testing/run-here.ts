import { vi } from 'vitest';
import type { Ran } from './run-command.ts';

process.env['LC_ALL'] = 'en-GB';
const { runProgram } = await import('../program.ts');

/** Runs a command in this process, in English, and gives back what it wrote. */
export async function runHere(words: readonly string[]): Promise<Ran> {
  const [out, err]: [Buffer[], Buffer[]] = [[], []];
  const catching = (into: Buffer[]) => (chunk: string | Uint8Array) => into.push(Buffer.from(chunk)) > 0;
  const spies = [vi.spyOn(process.stdout, 'write').mockImplementation(catching(out)), vi.spyOn(process.stderr, 'write').mockImplementation(catching(err))];
  try {
    const code = await runProgram(words);
    return { code, out: Buffer.concat(out).toString('utf8'), err: Buffer.concat(err).toString('utf8') };
  } finally {
    spies.forEach((spy) => { spy.mockRestore(); });
  }
}
