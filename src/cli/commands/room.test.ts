import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { type BenchStore, SHOP, openStore } from '#store';
import { roomDraftSchema } from '#workshop';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { keepOpen } from '../testing/kept-open.ts';
import type { Ran } from '../testing/run-command.ts';
import { runHere } from '../testing/run-here.ts';

/** The real store, opened once. */
let opened: BenchStore | undefined;
vi.mock('#store', async (original) => (await import('../testing/kept-open.ts')).withKeptOpen(await original()));

let folder = '';
let id = '';
const wood = { surface: 'wood-on-joists', own: null } as const;
const parlour = roomDraftSchema.parse({
  cycle: 1, name: 'Parlour, invented', plan: { shape: 'box', lengthMm: 6000, widthMm: 4500 }, heightMm: 2800, floor: wood, ceiling: wood, walls: [wood, wood, wood, wood], use: 'music',
});

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'wrestplank-room-'));
  opened = await openStore({ dataDir: path.join(folder, 'data'), clock: () => new Date(), newId: randomUUID });
  keepOpen(opened);
  ({ id } = await opened.addPiano(SHOP, { name: 'Roomed, invented', kind: 'grand', lengthMm: 1830 }, 'test'));
}, 120_000);
afterAll(async () => {
  await opened?.close();
  await rm(folder, { recursive: true, force: true });
});

/** Runs one command here and gives back what it wrote. */
const runCommand = (...words: readonly string[]): Promise<Ran> => runHere([...words, '--data', path.join(folder, 'data')]);

describe('room at the command line', () => {
  it('says that none is noted, then tells one in words and in full precision, and refuses a name no room has', async () => {
    expect(await runCommand('room', id)).toMatchObject({ code: 0, out: '', err: expect.stringContaining('No room is noted') as string });
    await (opened as BenchStore).addRoom(id, parlour, 'test');
    const { code, out } = await runCommand('room', id);
    expect(code).toBe(0);
    for (const words of ['Parlour, invented', 'Sabine', 'DIN 18041', 'Bass ratio', 'What to hang or lay', 'Places for the piano']) expect(out).toContain(words);
    expect((await runCommand('room', id, '--lang', 'de')).out).toContain('Nachhall');

    const [told] = JSON.parse((await runCommand('room', id, '--room', 'Parlour, invented', '--json')).out) as readonly Readonly<Record<string, unknown>>[];
    expect(told).toMatchObject({ name: 'Parlour, invented', volumeM3: 75.6, target: { standard: 'DIN 18041:2016-03, A1' }, measured: null, places: { gridMm: 250 } });
    // Sabine by hand at 500 Hz: 0.161·75.6/(0.10·112.8 + 4·75.6·2.7/4343), air of ISO 9613-1 at 20 °C and 50 %.
    expect((told?.['times'] as { sabine: readonly number[] }).sabine[2]).toBeCloseTo(1.061, 2);
    expect(await runCommand('room', id, '--room', 'Hall')).toMatchObject({ code: 2, out: '', err: expect.stringContaining('Parlour, invented') as string });
  });
});
