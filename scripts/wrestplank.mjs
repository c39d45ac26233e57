#!/usr/bin/env node
/** The command `wrestplank`. In a clone that was never built it first installs and builds, saying so on standard error alone. */
import { existsSync } from 'node:fs';
import path from 'node:path';
import { ensureBuilt } from './lib/build.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { root, sayOnErrorOnly } from './lib/run.mjs';

if (!existsSync(path.join(root, 'dist/.built-from'))) {
  sayOnErrorOnly();
  await ensureInstalled();
  await ensureBuilt();
}
await import('../dist/cli/main.js');
