/**
 * `npm test`: installs what is missing (a browser included), builds, and runs every check.
 * Ends with one line, `N passed, N failed`; each check that is not a test counts as one.
 */
import { mkdir, readFile, rm } from 'node:fs/promises';
import path from 'node:path';
import { ensureBrowser } from './lib/browser.mjs';
import { ensureBuilt } from './lib/build.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { root, run, tool } from './lib/run.mjs';

const RESULTS = path.join(root, 'test-results');
const counts = { passed: 0, failed: 0 };

function count(name, good) {
  counts[good ? 'passed' : 'failed'] += 1;
  console.log(`${good ? 'ok' : 'FAILED'}: ${name}`);
}

async function check(name, work) {
  console.log(`\n== ${name}`);
  try {
    count(name, (await work()) !== false);
  } catch (error) {
    console.error(error);
    count(name, false);
  }
}

const command = (name, args) => async () => (await run(tool(name), args)) === 0;

/** Runs one set of tests and counts each of them; a set that runs none has failed. */
async function tests(name, args, env = {}) {
  console.log(`\n== ${name}`);
  const file = path.join(RESULTS, `${name.replaceAll(' ', '-')}.json`);
  const code = await run(tool('vitest'), ['run', ...args, '--reporter=dot', '--reporter=json', `--outputFile.json=${file}`], { env: { ...process.env, ...env } });
  const report = JSON.parse(await readFile(file, 'utf8').catch(() => '{}'));
  counts.passed += report.numPassedTests ?? 0;
  counts.failed += report.numFailedTests ?? 0;
  if (!report.numTotalTests) count(`${name}: no test ran`, false);
  else if (report.numPendingTests + (report.numTodoTests ?? 0) > 0) count(`${name}: ${String(report.numPendingTests)} skipped`, false);
  else if (code !== 0 && report.numFailedTests === 0) count(`${name}: ended with exit code ${String(code)}`, false);
}

await ensureInstalled();
await rm(RESULTS, { recursive: true, force: true });
await mkdir(RESULTS, { recursive: true });
await check('build', ensureBuilt);
await check('types', command('tsc', ['-p', 'tsconfig.json']));
await check('lint', command('eslint', ['.', '--max-warnings=0']));
await check('structure', command('depcruise', ['src', '--config', 'lint/structure.cjs']));
await check('unused code', command('knip', []));
await tests('tests', []);
let browser;
await check('browser', async () => {
  browser = await ensureBrowser();
  console.log(browser);
});
if (browser !== undefined) await tests('browser tests', ['--config', 'vitest.e2e.config.ts', '--reporter=./e2e/support/second-tries.mjs'], { WRESTPLANK_BROWSER: browser });

console.log(`\n${String(counts.passed)} passed, ${String(counts.failed)} failed`);
process.exitCode = counts.failed === 0 ? 0 : 1;
