import { closeSync, fsyncSync, openSync } from 'node:fs';

/** Brings one file or folder to the disk. */
export function syncOne(path: string, flags: 'r' | 'r+'): void {
  const file = openSync(path, flags);
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** Windows opens no folders, and orders its own. */
export function syncFolder(folder: string): void {
  if (process.platform !== 'win32') syncOne(folder, 'r');
}
