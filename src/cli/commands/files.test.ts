import { randomUUID } from 'node:crypto';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { type BenchStore, SHOP, openStore } from '#store';
import type { ImportPreview } from '#workshop';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { keepOpen } from '../testing/kept-open.ts';
import type { Ran } from '../testing/run-command.ts';
import { runHere } from '../testing/run-here.ts';

/** The real store, opened once: each command but the last would else start the database anew. */
let opened: BenchStore | undefined;
vi.mock('#store', async (original) => (await import('../testing/kept-open.ts')).withKeptOpen(await original()));

let folder = '';
let data = '';
let id = '';
const file = (name: string) => path.join(folder, name);

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'wrestplank-cli-files-'));
  data = file('data');
  opened = await openStore({ dataDir: data, clock: () => new Date(), newId: randomUUID });
  keepOpen(opened);
  ({ id } = await opened.addPiano(SHOP, { name: 'Invented grand', kind: 'grand' }, 'test'));
});
afterAll(async () => {
  await opened?.close();
  await rm(folder, { recursive: true, force: true });
});

/** Runs one command here and gives back what it wrote. */
const run = (...words: readonly string[]): Promise<Ran> => runHere([...words, '--data', data]);
const standing = async (state = 'found') => {
  const { out } = await run('export', id, '--state', state, '--json');
  return (JSON.parse(out) as { quantity: string; index: number; typed: string; value: number }[]).map(({ quantity, index, typed, value }) => [quantity, index, typed, value]);
};

describe('import and export at the command line', () => {
  it('writes under the name of the person at the bench, told once when new', async () => {
    const { id: piano } = await (opened as BenchStore).addPiano(SHOP, { name: 'Named grand', kind: 'grand' }, 'test');
    await writeFile(file('who.csv'), 'key,downWeightG\n1,49\n');
    const who = ['--who', 'Ada Tester'];
    const dry = await run('import', piano, file('who.csv'), '--state', 'found', '--dry-run', ...who);
    expect([dry.code, await opened?.listPeople(SHOP)]).toEqual([0, []]);
    expect((await run('import', piano, file('who.csv'), '--state', 'found', ...who)).err).toContain('Ada Tester is new at the bench');
    await writeFile(file('who.csv'), 'key,downWeightG\n1,50\n');
    expect((await run('import', piano, file('who.csv'), '--state', 'found', ...who)).err).not.toContain('new at the bench');
    const [person] = (await opened?.listPeople(SHOP)) ?? [];
    expect((await opened?.listEvents(piano))?.map(({ by }) => by)).toEqual([person?.reference, person?.reference, 'test']);
  });

  it('writes a German table as one event, decimal commas and all', async () => {
    await writeFile(file('de.csv'), 'Taste;Niedergewicht;Aufgewicht;BW\r\n1;49,5;26;37,75\r\n2;50,25;27,5;38,9\r\n\r\n');
    const dry = await run('import', id, file('de.csv'), '--state', 'found', '--dry-run', '--json');
    expect([dry.code, await standing()]).toEqual([0, []]);
    const done = await run('import', id, file('de.csv'), '--state', 'found', '--json');
    const [would, did] = [dry, done].map(({ out }) => JSON.parse(out) as ImportPreview & { seq: number | null });
    expect(did?.counts).toEqual(would?.counts);
    expect([would?.seq, typeof did?.seq]).toEqual([null, 'number']);
    expect(done.err).toContain('worked out');
    expect(await standing()).toEqual([['downWeightG', 1, '49,5', 49.5], ['downWeightG', 2, '50,25', 50.25], ['upWeightG', 1, '26', 26], ['upWeightG', 2, '27,5', 27.5]]);
  });

  it('finds nothing to write the second time', async () => {
    const again = await run('import', id, file('de.csv'), '--state', 'found');
    expect([again.code, again.out]).toEqual([0, 'Nothing to write: rows new 0, replacing 0, the same 2, refused 0, empty 0\n']);
  });

  it.each(['csv', 'tsv', 'xlsx'])('exports %s that imports as the same', async (format) => {
    const out = file(`out.${format}`);
    expect((await run('export', id, '--state', 'found', '--out', out)).code).toBe(0);
    const back = JSON.parse((await run('import', id, out, '--state', 'found', '--dry-run', '--json')).out) as ImportPreview;
    expect(back.counts).toEqual({ create: 0, update: 0, same: 2, refused: 0, empty: 86 });
    const before = await readFile(out);
    const second = await run('export', id, '--state', 'found', '--out', out);
    expect([second.code, await readFile(out)]).toEqual([2, before]);
  });

  it('prints an export to standard output, and nothing else there', async () => {
    const { out, err } = await run('export', id, '--state', 'found', '--locale', 'de-DE');
    expect(out.split('\r\n').slice(0, 3)).toEqual(['key;note;downWeightG;upWeightG', '1;A0;49,5;26', '2;A#0;50,25;27,5']);
    expect(err).toBe('');
  });

  it('writes nothing when a row is refused, names its cell, and ends with 2', async () => {
    await writeFile(file('bad.csv'), 'key,downWeightG,upWeightG\n1,48,26\n2,5O,27\n99,50,27\n');
    const { code, out, err } = await run('import', id, file('bad.csv'), '--state', 'finished');
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('2 rows are refused, and nothing was written');
    expect(err).toContain('row 3, column B (downWeightG)');
    expect(err).toContain('99');
    expect(await standing('finished')).toEqual([]);
  });

  it('writes the other rows when told to, and counts the refused', async () => {
    const { code, out, err } = await run('import', id, file('bad.csv'), '--state', 'finished', '--skip-refused');
    expect([code, out]).toEqual([0, 'Written: rows new 1, replacing 0, the same 0, refused 2, empty 0\n']);
    expect(err).toContain('Row 3:');
    expect(await standing('finished')).toHaveLength(2);
  });

  it('takes columns by letter, given more than once', async () => {
    await writeFile(file('bare.csv'), '5;51;28\n6;52;29\n');
    expect((await run('import', id, file('bare.csv'), '--state', 'planned')).code).toBe(2);
    const { code } = await run('import', id, file('bare.csv'), '--state', 'planned', '--map', 'A=key', '--map', 'B=downWeightG', '--map', 'C=');
    expect([code, await standing('planned')]).toEqual([0, [['downWeightG', 5, '51', 51], ['downWeightG', 6, '52', 52]]]);
  });

  it.each<[string, readonly string[], string]>([
    ['a cycle that never was', ['--state', 'found', '--cycle', '7'], '--cycle'],
    ['a state that is none', ['--state', 'before'], 'before'],
    ['a locale that is none', ['--state', 'found', '--locale', '!!'], '!!'],
    ['a mapping that is none', ['--state', 'found', '--map', 'A'], '--map'],
    ['a column that is not there', ['--state', 'found', '--map', 'Z=key'], 'Z'],
    ['a session that is not there', ['--state', 'planned', '--session', 'nobody'], 'nobody'],
  ])('refuses %s by name with exit code 2', async (_, words, named) => {
    const { code, out, err } = await run('import', id, file('de.csv'), ...words);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(named);
  });

  it('keeps what it acknowledged: a later start on the same folder finds it', async () => {
    await opened?.close();
    opened = undefined;
    keepOpen(opened);
    expect(await standing()).toHaveLength(4);
  });

  it('refuses with a problem document where a script listens', async () => {
    const { code, out, err } = await run('import', id, file('nowhere.csv'), '--state', 'found', '--json');
    expect([code, out]).toEqual([2, '']);
    expect(JSON.parse(err)).toMatchObject({ status: 422 });
  });
});
