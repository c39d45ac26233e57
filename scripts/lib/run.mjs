import { spawn } from 'node:child_process';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the checkout. */
export const root = path.resolve(fileURLToPath(import.meta.url), '../../..');

/** Runs a command in the checkout, output passed through; resolves to its exit code. */
export function run(command, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd: root, stdio: 'inherit', shell: process.platform === 'win32', ...options });
    child.on('error', reject);
    child.on('close', (code, signal) => resolve(signal === null ? code : 1));
  });
}

/** Runs a command and throws when it fails. */
export async function must(command, args, options) {
  const code = await run(command, args, options);
  if (code !== 0) throw new Error(`${command} ${args.join(' ')} ended with exit code ${String(code)}`);
}

/** Path of a command installed in the checkout. */
export const tool = (name) => path.join(root, 'node_modules', '.bin', name);
