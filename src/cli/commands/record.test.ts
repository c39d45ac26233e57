import { randomUUID } from 'node:crypto';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { writeWav } from '#recording';
import { type BenchStore, SHOP, openStore } from '#store';
import { demoLadderOf, demoSoundOf } from '#workshop';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { keepOpen } from '../testing/kept-open.ts';
import type { Ran } from '../testing/run-command.ts';
import { runHere } from '../testing/run-here.ts';

/** The real store, opened once. */
let opened: BenchStore | undefined;
vi.mock('#store', async (original) => (await import('../testing/kept-open.ts')).withKeptOpen(await original()));

let folder = '';
let id = '';
const file = (name: string) => path.join(folder, name);
const note = { f0Hz: 261.63, inharmonicityB: 4e-4, slopeDbPerOctave: 6, decayS: 4, levelDb: 0, seed: 1 };
const keyHz = (key: number): number => 440 * 2 ** ((key - 49) / 12);

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'wrestplank-record-'));
  opened = await openStore({ dataDir: file('data'), clock: () => new Date(), newId: randomUUID });
  keepOpen(opened);
  ({ id } = await opened.addPiano(SHOP, { name: 'Recorded, invented', kind: 'grand' }, 'test'));
  await writeFile(file('040 loud.wav'), writeWav(demoSoundOf(note)));
  await writeFile(file('E4.wav'), writeWav(demoSoundOf({ ...note, seed: 2 })));
  await writeFile(file('cut.wav'), 'no sound at all, whatever its name');
  const strikes = [40, 41, 43].map((key) => demoLadderOf({ ...note, f0Hz: keyHz(key) }).channels[0]?.subarray(160_000, 240_000) ?? new Float64Array());
  const walk = new Float64Array(strikes.reduce((sum, { length }) => sum + length, 0));
  strikes.forEach((strike, index) => { walk.set(strike, index * strike.length); });
  await writeFile(file('walk.wav'), writeWav({ sampleRateHz: 32_000, channels: [walk] }));
}, 120_000);
afterAll(async () => {
  await opened?.close();
  await rm(folder, { recursive: true, force: true });
});

/** Runs one command here and gives back what it wrote. */
const runCommand = (...words: readonly string[]): Promise<Ran> => runHere(words);

describe('recordings kept from the command line', () => {
  it.each([
    ['record', ['record', 'ID', 'E4.wav', '--state', 'found', '--key', '44', '--key', '45'], '--key', '44, 45'],
    ['listen', ['listen', 'E4.wav', '--reference', '440', '--reference', '442'], '--reference', '440, 442'],
  ])('%s refuses an option that stands twice, by name', async (_, words, option, given) => {
    const { code, out, err } = await runCommand(...words.map((word) => (word === 'ID' ? id : word.endsWith('.wav') ? file(word) : word)));
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(option);
    expect(err).toContain(given);
  });

  it('are heard each by itself, kept whole, and those that are none are told while the others stay', async () => {
    const { code, out, err } = await runCommand('record', id, file('040 loud.wav'), file('E4.wav'), file('cut.wav'), '--state', 'found', '--place', 'over the tail', '--data', file('data'));
    expect(code, err).toBe(2);
    expect(out, err).toContain('C4 (40)');
    expect(out.match(/C4 \(40\)/gu)).toHaveLength(2);
    expect(err).toContain('cut.wav');
    expect(err).toContain('1 of 3 recordings were refused');
    const kept = await opened?.listRecordings(id);
    expect(kept).toMatchObject([{ fileName: '040 loud.wav', key: null, place: 'over the tail', state: 'found', contents: 'note' }, { fileName: 'E4.wav' }]);
    expect(kept?.[0]?.file.byteCount).toBe((await readFile(file('040 loud.wav'))).byteLength);
  }, 300_000);

  it('are compared with the key in their name where that is asked', async () => {
    const { code, err } = await runCommand('record', id, file('E4.wav'), '--state', 'finished', '--keys-from-names', '--data', file('data'));
    expect([code, err]).toEqual([0, expect.stringContaining('E4.wav: Told E4, heard C4')]);
  }, 300_000);

  it('are taken apart where they are a walk, with the keys that are missing', async () => {
    const { code, out, err } = await runCommand('record', id, file('walk.wav'), '--state', 'found', '--contents', 'walk', '--json', '--data', file('data'));
    expect(code, err).toBe(0);
    const [{ answer }] = JSON.parse(out) as [{ answer: { notes: { key: number }[] } }];
    expect(answer.notes.map(({ key }) => key)).toEqual([40, 41, 43]);
  }, 300_000);

  it.each([['a walk', ['--contents', 'walk', '--key', '40']], ['a key beyond the compass', ['--key', '89']], ['a stay that is not', ['--cycle', '2']]] as const)('refuse %s with what was given and what is allowed, keeping nothing', async (_, rest) => {
    const before = (await opened?.listRecordings(id))?.length;
    const { code, err } = await runCommand('record', id, file('E4.wav'), '--state', 'found', ...rest, '--data', file('data'));
    expect([code, err]).toEqual([2, expect.stringContaining(rest.at(-1) ?? '')]);
    expect((await opened?.listRecordings(id))?.length).toBe(before);
  });
});

it('are listened to without being kept, every one of many, and a take at another pitch of A4', async () => {
  const both = await runCommand('listen', file('040 loud.wav'), file('E4.wav'));
  expect(both.code, both.err).toBe(0);
  expect(both.out.match(/C4 \(40\)/gu)).toHaveLength(2);
  const take = await runCommand('listen', '--run', '--reference', '415.3', '--json', file('walk.wav'));
  expect(take.code, take.err).toBe(0);
  expect((JSON.parse(take.out) as { notes: { key: number }[] }).notes.map(({ key }) => key)).toEqual([41, 42, 44]);
}, 300_000);
