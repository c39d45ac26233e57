import { cpSync, existsSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { hasTemplate, makeCluster, templateFolder } from './template.ts';
import { syncFolder, syncOne } from '../sync.ts';

/**
 * The folder of the database files inside a data folder, made whole on the first start.
 * It is prepared beside its place, brought to the disk and moved there in one step, so that a first start cut short leaves nothing half made.
 */
export async function databaseFolder(dataDir: string, template = templateFolder): Promise<string> {
  const folder = join(dataDir, 'database');
  const unfinished = join(dataDir, 'database.unfinished');
  rmSync(unfinished, { recursive: true, force: true });
  if (existsSync(folder)) return folder;
  if (hasTemplate(template)) cpSync(template, unfinished, { recursive: true });
  else await makeCluster(unfinished);
  syncTree(unfinished);
  renameSync(unfinished, folder);
  syncFolder(dataDir);
  return folder;
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
