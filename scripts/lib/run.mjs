import { spawn } from 'node:child_process';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the checkout. */
export const root = path.resolve(fileURLToPath(import.meta.url), '../../..');

let stdio = 'inherit';

/** From now on what commands say goes to standard error: standard output is for data. */
export function sayOnErrorOnly() {
  stdio = ['inherit', process.stderr, process.stderr];
}

/** Runs a command in the checkout, output passed through; resolves to its exit code. */
export function run(command, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd: root, stdio, shell: process.platform === 'win32', ...options });
    child.on('error', reject);
    child.on('close', (code, signal) => resolve(signal === null ? code : 1));
  });
}

/** Runs the program until it ends; a signal to stop goes to it alone, so that it can close its data folder in peace. */
export function runUntilEnd(command, args) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd: root, stdio: 'inherit' });
    const pass = (signal) => child.kill(signal);
    // At a terminal Ctrl-C reaches the child by itself; this process only waits for it.
    process.on('SIGINT', () => {});
    process.on('SIGTERM', pass);
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
