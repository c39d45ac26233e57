import { cp, rm } from 'node:fs/promises';
import path from 'node:path';
import { must, root, tool } from './run.mjs';
import { hashOf, isStamped, stamp } from './stamp.mjs';

const STAMP = 'dist/.built-from';
const INPUTS = ['src', 'package.json', 'tsconfig.json', 'tsconfig.build.json', 'vite.config.ts'];

/** Files that are no TypeScript and are read at run time beside the code that reads them. */
const ASSETS = ['src/store/migrations', 'src/files/templates'];

/** Builds dist/ (server, command line, web app), unless it was built from exactly these sources. */
export async function ensureBuilt() {
  const hash = await hashOf(INPUTS);
  if (await isStamped(STAMP, hash)) return;
  await rm(path.join(root, 'dist'), { recursive: true, force: true });
  await must(tool('tsc'), ['-p', 'tsconfig.build.json']);
  for (const asset of ASSETS) await cp(path.join(root, asset), path.join(root, asset.replace(/^src/u, 'dist')), { recursive: true });
  await must(tool('vite'), ['build', '--logLevel', 'warn']);
  await must(process.execPath, ['scripts/make-template.mjs'], { shell: false });
  await stamp(STAMP, hash);
}
