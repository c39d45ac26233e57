import { mkdtemp, mkdir, rm, symlink, writeFile } from 'node:fs/promises';
import { spawn } from 'node:child_process';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';

const root = path.resolve(fileURLToPath(import.meta.url), '../..');
const houses: string[] = [];

interface Report {
  readonly summary: { readonly violations: readonly { readonly rule: { readonly name: string } }[] };
}

/** Builds a small house of the given files and answers the names of the rules it breaks. */
async function brokenRules(files: Readonly<Record<string, string>>): Promise<readonly string[]> {
  const house = await mkdtemp(path.join(os.tmpdir(), 'wrestplank-house-'));
  houses.push(house);
  await symlink(path.join(root, 'node_modules'), path.join(house, 'node_modules'), 'dir');
  const all = {
    'package.json': JSON.stringify({ type: 'module', imports: { '#*': { wrestplank: './src/*/index.ts' } } }),
    'tsconfig.json': '{"compilerOptions":{"module":"NodeNext","moduleResolution":"NodeNext","allowImportingTsExtensions":true,"noEmit":true,"customConditions":["wrestplank"]}}',
    ...files,
  };
  for (const [name, text] of Object.entries(all)) {
    await mkdir(path.dirname(path.join(house, name)), { recursive: true });
    await writeFile(path.join(house, name), text);
  }
  const text = await outputOf(process.execPath, [path.join(root, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs'), 'src', '--config', path.join(root, 'lint/structure.cjs'), '--output-type', 'json'], house);
  return [...new Set((JSON.parse(text) as Report).summary.violations.map(({ rule }) => rule.name))].sort();
}

function outputOf(command: string, args: readonly string[], cwd: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd });
    let text = '';
    child.stdout.on('data', (chunk: Buffer) => (text += chunk.toString()));
    child.on('error', reject);
    child.on('close', () => { resolve(text); });
  });
}

afterAll(() => Promise.all(houses.map((house) => rm(house, { recursive: true, force: true }))));

const kernel = { 'src/result/index.ts': `export { a } from './a.ts';`, 'src/result/a.ts': 'export const a = 1;' };

describe('the floors of the house', () => {
  it('lets arrows point down', async () => {
    expect(await brokenRules({ ...kernel, 'src/action/index.ts': `export { b } from './b.ts';`, 'src/action/b.ts': `import { a } from '#result';\nexport const b = a;` })).toEqual([]);
  });

  it.each<[string, Record<string, string>, string]>([
    ['an arrow upward', { 'src/result/a.ts': `import { b } from '#action';\nexport const a = b;`, 'src/action/index.ts': `export { b } from './b.ts';`, 'src/action/b.ts': 'export const b = 1;' }, 'floor-of-result'],
    ['the web reaching the store', { 'src/web/a.ts': `import { b } from '#store';\nexport const a = b;`, 'src/store/index.ts': `export { b } from './b.ts';`, 'src/store/b.ts': 'export const b = 1;' }, 'floor-of-web'],
    ['physics sideways', { 'src/action/a.ts': `import { b } from '#belly';\nexport const a = b;`, 'src/belly/index.ts': `export { b } from './b.ts';`, 'src/belly/b.ts': 'export const b = 1;' }, 'floor-of-action'],
    ['a relative path across modules', { ...kernel, 'src/units/b.ts': `import { a } from '../result/index.ts';\nexport const b = a;` }, 'no-relative-across'],
    ['a way in beside the door', { ...kernel, 'src/units/b.ts': `import { a } from '../result/a.ts';\nexport const b = a;` }, 'one-door'],
    ['a deep import by name', { ...kernel, 'src/units/b.ts': `import { a } from '#result/a';\nexport const b = a;` }, 'resolves'],
    ['a file coming in by its own door', { ...kernel, 'src/result/b.ts': `import { a } from './index.ts';\nexport const b = a;` }, 'no-own-door'],
    ['an index inside a module', { 'src/result/deep/index.ts': 'export const a = 1;', 'src/result/b.ts': `import { a } from './deep/index.ts';\nexport const b = a;` }, 'no-inner-index'],
    ['a circle', { 'src/result/a.ts': `import { b } from './b.ts';\nexport const a = () => b;`, 'src/result/b.ts': `import { a } from './a.ts';\nexport const b = () => a;` }, 'no-circle'],
    ['a clockwork of Node on a pure floor', { 'src/action/a.ts': `import { readFileSync } from 'node:fs';\nexport const a = readFileSync;` }, 'pure-floors'],
    ['a module nobody named', { ...kernel, 'src/misc/a.ts': `import { a } from '#result';\nexport const b = a;` }, 'known-module'],
    ['a test inside the program', { 'src/result/a.test.ts': 'export const a = 1;', 'src/result/b.ts': `import { a } from './a.test.ts';\nexport const b = a;` }, 'no-test-in-program'],
  ])('catches %s', async (_, files, rule) => {
    expect(await brokenRules(files)).toContain(rule);
  });
});
