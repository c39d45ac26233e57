/** `npm start`: installs what is missing, builds what has changed, opens the bench with the demo piano. */
import path from 'node:path';
import { ensureBuilt } from './lib/build.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { root, runUntilEnd } from './lib/run.mjs';

await ensureInstalled();
await ensureBuilt();
process.exitCode = await runUntilEnd(process.execPath, [path.join(root, 'dist/cli/main.js'), 'serve', '--demo', '--open', ...process.argv.slice(2)]);
