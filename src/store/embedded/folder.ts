import { closeSync, cpSync, existsSync, fsyncSync, mkdirSync, openSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { startEngine } from './engine.ts';

/** Database files as they are right after the first start, made when the program is built: copying them saves the slow part. */
const template = fileURLToPath(new URL(import.meta.url.endsWith('.ts') ? '../../../dist/store/template' : '../template', import.meta.url));

/**
 * The folder of the database files inside a data folder, made whole on the first start.
 * It is prepared beside its place, brought to the disk and moved there in one step, so that a first start cut short leaves nothing half made.
 */
export async function databaseFolder(dataDir: string): Promise<string> {
  const folder = join(dataDir, 'database');
  const unfinished = join(dataDir, 'database.unfinished');
  rmSync(unfinished, { recursive: true, force: true });
  if (existsSync(folder)) return folder;
  if (existsSync(join(template, 'PG_VERSION'))) cpSync(template, unfinished, { recursive: true });
  else await makeCluster(unfinished);
  syncTree(unfinished);
  renameSync(unfinished, folder);
  syncFolder(dataDir);
  return folder;
}

/** Makes new database files, which takes some seconds, and puts them to rest. */
export async function makeCluster(folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const engine = await startEngine(folder);
  await engine.stop();
}

/** Brings a folder and all in it to the disk. */
function syncTree(folder: string): void {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const inner = join(folder, entry.name);
    if (entry.isDirectory()) syncTree(inner);
    else syncOne(inner, 'r+');
  }
  syncFolder(folder);
}

function syncOne(path: string, flags: 'r' | 'r+'): void {
  const file = openSync(path, flags);
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** Windows opens no folders, and orders its own. */
function syncFolder(folder: string): void {
  if (process.platform !== 'win32') syncOne(folder, 'r');
}
