import { mkdir, mkdtemp, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Problem } from '#result';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Ran } from '../testing/run-command.ts';
import { runHere } from '../testing/run-here.ts';

const examples = (name: string): string => fileURLToPath(new URL(`../../../examples/${name}`, import.meta.url));
const STATED = ['--target-g', '49', '--tolerance-g', '2'];

let folder = '';
const file = (name: string): string => path.join(folder, name);

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'wrestplank-prove-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Runs one command here and gives back what it wrote. */
const run = (...words: readonly string[]): Promise<Ran> => runHere(words);

async function textOf(name: string): Promise<string> {
  const loading = getDocument({ data: Uint8Array.from(await readFile(file(name))), verbosity: 0 });
  const document = await loading.promise;
  const pages = await Promise.all(Array.from({ length: document.numPages }, async (_, index) => (await (await document.getPage(index + 1)).getTextContent()).items));
  await loading.destroy();
  return pages.flat().map((item) => ('str' in item ? item.str : '')).join(' ').replaceAll(/\s+/gu, ' ');
}

/** Runs a proof that must be refused, and sees that nothing was written. */
async function refusedOf(...words: readonly string[]): Promise<Problem> {
  const before = await readdir(folder);
  const { code, out, err } = await run('prove', ...words, '--out', file('refused.pdf'), '--json');
  expect([code, out]).toEqual([2, '']);
  expect(await readdir(folder)).toEqual(before);
  return JSON.parse(err) as Problem;
}

describe('prove from two tables', () => {
  it('prints a proof of the example tables and answers its counts', async () => {
    const { code, out } = await run('prove', '--found', examples('found.csv'), '--finished', examples('finished.csv'), '--out', file('proof.pdf'), ...STATED, '--found-on', '2026-02-09', '--step-g', '1', '--repeatability-g', '0,5', '--dampers', 'lifted', '--kind', 'grand', '--title', 'My *own* title', '--json');
    expect(code).toBe(0);
    const answer = JSON.parse(out) as { readonly found: { readonly inside: number; readonly judged: number }; readonly finished: { readonly inside: number } };
    const text = await textOf('proof.pdf');
    expect(text).toContain('My *own* title');
    expect(text).toContain(`${String(answer.found.inside)} of ${String(answer.found.judged)}`);
    expect(text).toContain(`${String(answer.finished.inside)} of 88`);
    expect(text).toContain('0.5 g');
    expect(text).toContain('lifted');
    expect(text).toMatch(/Day of weighing 9 February 2026 not stated/u);
    expect(text).not.toContain('DEMO');
    expect(await readdir(folder)).toEqual(['proof.pdf']);
  });

  it('proves strings and bearing of a piano no key of which was weighed, and says what is left out', async () => {
    const rows = Array.from({ length: 12 }, (_, index) => `${String(index + 51)},${String(300 - 9 * index)},0.95,3,0.4,0.7`);
    await writeFile(file('strings.csv'), `key,speakingLengthMm,wireDiameterMm,stringCount,frontBearingDeg,rearBearingDeg\n${rows.join('\n')}\n`);
    const { code, err } = await run('prove', '--found', file('strings.csv'), '--out', file('strings.pdf'));
    expect([code, err]).toEqual([0, expect.stringMatching(/strings and bearing, no weights, 60 readings/u)]);
    const text = await textOf('strings.pdf');
    expect(text).toContain('they are left out and nothing is said of them: touch');
    expect(text).toContain('12 of 88 notes');
    expect(text).toContain('1.10');
    expect(text).not.toContain('Down weight');
  });

  it('judges nothing without a target, assumes nothing, and says so', async () => {
    const { code, err } = await run('prove', '--finished', examples('finished.csv'), '--out', file('plain.pdf'));
    expect([code, err]).toEqual([0, expect.stringContaining('No --target-g was given')]);
    const text = await textOf('plain.pdf');
    expect(text).toContain('No target was stated, so nothing is judged inside or outside');
    expect(text).toContain('88 keys, A0 to C8 (assumed, not stated)');
    expect(text).toContain('neither step nor repeatability was stated, so no uncertainty is claimed');
    expect(text).toContain('The kind of the instrument was not stated');
    expect(text.split('not stated').length).toBeGreaterThan(15);
    expect(text).not.toMatch(/\boutside [+−]/u);
  });

  it('counts a keyboard from 47 to 50 g as inside 49 ± 2 g', async () => {
    // Common practice, no source: the limits themselves are inside.
    await writeFile(file('edge.csv'), ['key,downWeightG,upWeightG', ...Array.from({ length: 88 }, (_, index) => `${String(index + 1)},${String(47 + (index % 4))},24`)].join('\n'));
    const { out } = await run('prove', '--finished', file('edge.csv'), '--out', file('edge.pdf'), ...STATED, '--json');
    expect((JSON.parse(out) as { finished: object }).finished).toMatchObject({ inside: 88, measured: 88 });
    await rm(file('edge.csv'));
  });

  it('proves 85 keys of an upright in German on Letter, decimal commas and all', async () => {
    await writeFile(file('klavier.csv'), ['Taste;Niedergewicht;Aufgewicht', ...Array.from({ length: 85 }, (_, index) => `${String(index + 1)};${String(48 + (index % 3))},5;24`)].join('\r\n'));
    const { code } = await run('prove', '--found', file('klavier.csv'), '--out', file('klavier.pdf'), ...STATED, '--kind', 'upright', '--first-note', 'A0', '--last-note', 'A7', '--lang', 'de', '--paper', 'letter', '--demo');
    expect(code).toBe(0);
    const text = await textOf('klavier.pdf');
    for (const words of ['85 Tasten, A0 bis A7', 'Pianino', 'Balancegewicht und Reibung, mehr nicht', 'nicht angegeben', '50,5', 'DEMO']) expect(text).toContain(words);
    await rm(file('klavier.csv'));
  });

  it('names every key whose up weight stands above its down weight, leaves its balance open and proves the others', async () => {
    await writeFile(file('swapped.csv'), 'key,downWeightG,upWeightG\n1,49,26\n40,40,43\n41,48,25\n');
    const { code, out, err } = await run('prove', '--found', file('swapped.csv'), '--out', file('swapped.pdf'), ...STATED, '--json');
    expect(code).toBe(0);
    expect(err.trim()).toBe('As found, key 40 (C4): up weight 43 g given, at most the down weight, 40 g, allowed. Both are printed as typed; balance and friction of this key are left open.');
    expect((JSON.parse(out) as { found: object }).found).toMatchObject({ inside: 2, judged: 3, measured: 3 });
    const text = await textOf('swapped.pdf');
    expect(text).toContain('2 of 3');
    expect(text).toMatch(/40 C4 40\.0 43\.0 – –/u);
    expect(text).not.toContain('−1.5');
    await rm(file('swapped.csv'));
  });

  it('says which columns it did not read', async () => {
    await writeFile(file('extra.csv'), 'key,downWeightG,upWeightG,mood\n1,49,26,fair\n');
    const { code, err } = await run('prove', '--found', file('extra.csv'), '--out', file('extra.pdf'));
    expect([code, err]).toEqual([0, expect.stringContaining('extra.csv: column D “mood” is not read')]);
    await rm(file('extra.csv'));
  });
});

describe('prove a piano of the store', () => {
  it('prints the demo grand with its record, marked as invented on every page', async () => {
    const data = file('data');
    expect((await run('demo', 'add', '--data', data)).code).toBe(0);
    const { code, out, err } = await run('prove', 'Demo grand, invented', '--data', data, '--out', file('demo.pdf'), '--json');
    expect([code, err]).toEqual([0, '']);
    const { head } = JSON.parse(out) as { readonly head: { readonly seq: number; readonly hash: string } };
    const audit = JSON.parse((await run('audit', 'Demo grand, invented', '--data', data, '--json')).out) as { readonly headHash: string };
    expect(head.hash).toBe(audit.headHash);
    const text = await textOf('demo.pdf');
    expect(text).toContain(head.hash);
    expect(text.split('DEMO').length - 1).toBeGreaterThanOrEqual(Number(/Page 1 of (\d+)/u.exec(text)?.[1]));
    const cycle = await run('prove', 'Demo grand, invented', '--data', data, '--cycle', '2', '--out', file('none.pdf'), '--json');
    expect([cycle.code, (JSON.parse(cycle.err) as Problem).errors[0]?.path]).toEqual([2, '--cycle']);
    expect(await readdir(folder)).not.toContain('none.pdf');
    await rm(data, { recursive: true });
  }, 240_000);
});

describe('prove refuses, writes nothing and names', () => {
  const found = examples('found.csv');

  it.each([
    ['a figure that is none', ['--found', found, '--target-g', 'heavy', '--tolerance-g', '2'], '--target-g'],
    ['a negative tolerance', ['--found', found, '--target-g', '49', '--tolerance-g', '-2'], '--tolerance-g'],
    ['a target without a tolerance', ['--found', found, '--target-g', '49'], '--tolerance-g'],
    ['a tolerance without a target', ['--found', found, '--tolerance-g', '2'], '--target-g'],
    ['an infinite step', ['--found', found, '--step-g', '1e999'], '--step-g'],
    ['a note that is none', ['--found', found, '--first-note', 'Q9'], '--first-note'],
    ['notes the wrong way round', ['--found', found, '--first-note', 'C8', '--last-note', 'A0'], '--last-note'],
    ['a language that is none', ['--found', found, '--lang', '!'], '--lang'],
    ['a file that is not there', ['--found', '/nowhere/found.csv'], '/nowhere/found.csv'],
    ['a day that is none', ['--found', found, '--found-on', '2026-02-30'], '--found-on'],
    ['a day in another writing', ['--found', found, '--found-on', '9.2.2026'], '--found-on'],
    ['a day of a table that is not given', ['--found', found, '--finished-on', '2026-02-09'], '--finished'],
  ])('%s', async (_, words, option) => {
    const problem = await refusedOf(...words);
    expect(problem.errors.map((each) => each.path)).toContain(option);
  });

  it.each([
    ['neither a piano nor a table', []],
    ['a piano and a table', ['someone', '--found', found]],
    ['weighing statements beside a piano of the store', ['someone', '--step-g', '1']],
    ['a store beside tables', ['--found', found, '--data', '/tmp/x']],
    ['a paper that is none', ['--found', found, '--paper', 'a5']],
  ])('%s', async (_, words) => {
    expect((await refusedOf(...words)).detail).not.toBe('');
  });

  it('every bad cell of both tables at once', async () => {
    await writeFile(file('bad-a.csv'), 'key,downWeightG,upWeightG\n1,4x,26\n99,49,26\n');
    await writeFile(file('bad-b.csv'), 'key,downWeightG,upWeightG\n1,-49,26\n');
    const problem = await refusedOf('--found', file('bad-a.csv'), '--finished', file('bad-b.csv'));
    const paths = problem.errors.map((each) => each.path);
    expect(paths.some((each) => each.startsWith('bad-a.csv, row 2'))).toBe(true);
    expect(paths.some((each) => each.startsWith('bad-a.csv, row 3'))).toBe(true);
    expect(paths.some((each) => each.startsWith('bad-b.csv, row 2'))).toBe(true);
    await rm(file('bad-a.csv'));
    await rm(file('bad-b.csv'));
  });

  it.each([
    ['a file that is not there', 'missing.csv', undefined, 'There is no such file.'],
    ['a file below a file', 'plain.csv/found.csv', undefined, 'There is no such file.'],
    ['a folder given for a file', '.', undefined, 'This is a folder, and a file is needed.'],
    ['an empty file', 'empty.csv', '', 'The file is empty.'],
    ['a file that is no table', 'picture.csv', Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0xff, 0xfe, 0x80]), 'This file is no table that can be read'],
    ['a letter, not a table', 'letter.csv', 'Dear customer,\nthe weights follow.\n', 'column'],
    ['a huge file', 'huge.csv', new Uint8Array(20 * 1024 * 1024 + 1), 'The file is too large: 20.0 MB, at most 20 MB.'],
  ])('%s, in one sentence that names it', async (_, name, content, words) => {
    if (content !== undefined) await writeFile(file(name), content);
    await writeFile(file('plain.csv'), 'key,downWeightG,upWeightG\n1,49,26\n');
    const before = await readdir(folder);
    const { code, out, err } = await run('prove', '--found', file(name), '--out', file('refused.pdf'));
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(words);
    expect(err).toContain(name === '.' ? folder : path.basename(name));
    expect(err).not.toMatch(/^\s+at |Error:|E[A-Z]{4,}/mu);
    expect(await readdir(folder)).toEqual(before);
    if (content !== undefined) await rm(file(name));
    await rm(file('plain.csv'));
  });

  it('both tables by name when neither is there', async () => {
    const problem = await refusedOf('--found', file('one.csv'), '--finished', file('two.csv'));
    expect(problem.errors.map((each) => each.path)).toEqual([file('one.csv'), file('two.csv')]);
  });

  it.each([
    ['a folder that is not there', 'none/proof.pdf', 'because its folder does not exist. Nothing was written.'],
    ['a folder for the document', 'some', 'is a folder, and a file is needed. Nothing was written.'],
  ])('%s, naming the file that was to be written', async (_, name, words) => {
    await mkdir(file('some'), { recursive: true });
    const before = await readdir(folder);
    const { code, err } = await run('prove', '--found', found, '--out', file(name));
    expect([code, err]).toEqual([2, expect.stringContaining(file(name))]);
    expect(err).toContain(words);
    expect(await readdir(folder)).toEqual(before);
    await rm(file('some'), { recursive: true });
  });

  it('to write the document over one of its tables', async () => {
    await writeFile(file('mine.csv'), 'key,downWeightG,upWeightG\n1,49,26\n');
    const { code, err } = await run('prove', '--found', file('mine.csv'), '--out', file('./mine.csv'));
    expect([code, err]).toEqual([2, expect.stringContaining('is one of the tables')]);
    expect(await readFile(file('mine.csv'), 'utf8')).toContain('49,26');
    await rm(file('mine.csv'));
  });

  it('a place it cannot write to, and leaves what stood there', async () => {
    const { code, err } = await run('prove', '--found', found, '--out', path.join(folder, 'none', 'proof.pdf'));
    expect(code).toBe(2);
    expect(err).toContain('--out');
  });
});
