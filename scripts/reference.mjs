/** Writes docs/reference.md anew from the built program. */
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { ensureBuilt } from './lib/build.mjs';
import { root } from './lib/run.mjs';

process.env.LC_ALL = 'C';
await ensureBuilt();
const { writtenReference } = await import('../dist/cli/index.js');
await writeFile(path.join(root, 'docs/reference.md'), await writtenReference());
