import { createHash } from 'node:crypto';
import { readFile, readdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { root } from './run.mjs';

async function filesUnder(entry) {
  const full = path.join(root, entry);
  const children = await readdir(full, { withFileTypes: true }).catch((error) => {
    if (error.code === 'ENOTDIR') return null;
    throw error;
  });
  if (children === null) return [entry];
  const nested = await Promise.all(children.map((child) => filesUnder(path.join(entry, child.name))));
  return nested.flat();
}

/** One hash over the contents and names of files and folders of the checkout. */
export async function hashOf(entries) {
  const files = (await Promise.all(entries.map(filesUnder))).flat().sort();
  const hash = createHash('sha256');
  for (const file of files) hash.update(file).update('\0').update(await readFile(path.join(root, file))).update('\0');
  return hash.digest('hex');
}

/** True when the stamp file holds exactly this hash. */
export async function isStamped(file, hash) {
  const text = await readFile(path.join(root, file), 'utf8').catch(() => '');
  return text.trim() === hash;
}

/** Writes the stamp, once the work it stands for is done. */
export async function stamp(file, hash) {
  await writeFile(path.join(root, file), `${hash}\n`);
}
