import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { migrateTables } from '../migrate.ts';
import { startEngine } from './engine.ts';

/** Database files as they are right after the first start, made when the program is built: copying them saves the slow part. */
export const templateFolder = fileURLToPath(new URL(import.meta.url.endsWith('.ts') ? '../../../dist/store/template' : '../template', import.meta.url));

/** True when there are such files. */
export function hasTemplate(folder: string): boolean {
  return existsSync(join(folder, 'PG_VERSION'));
}

/** Makes the template, tables and all, in one step; with one there already, only when `anew`. */
export async function makeTemplate(folder = templateFolder, anew = false): Promise<void> {
  if (hasTemplate(folder) && !anew) return;
  mkdirSync(dirname(folder), { recursive: true });
  const unfinished = `${folder}.${String(process.pid)}`;
  await makeCluster(unfinished);
  rmSync(folder, { recursive: true, force: true });
  renameSync(unfinished, folder);
}

/** Makes new database files with their tables, which takes some seconds, and puts them to rest. */
export async function makeCluster(folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const engine = await startEngine(folder);
  try {
    await migrateTables(engine.pool);
  } finally {
    await engine.stop();
  }
}
