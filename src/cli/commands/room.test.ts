import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type * as Store from '#store';
import { type BenchStore, SHOP, openStore } from '#store';
import { roomDraftSchema } from '#workshop';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';

vi.hoisted(() => {
  process.env['LC_ALL'] = 'en-GB';
});
/** The real store, opened once. */
let opened: BenchStore | undefined;
vi.mock('#store', async (original) => {
  const real = await original<typeof Store>();
  const keptOpen = (store: BenchStore): BenchStore => new Proxy(store, { get: (target, name): unknown => (name === 'close' ? () => Promise.resolve() : Reflect.get(target, name)) });
  return { ...real, openStore: async (options: Parameters<typeof real.openStore>[0]) => (opened === undefined ? real.openStore(options) : keptOpen(opened)) };
});
const { runProgram } = await import('../index.ts');

let folder = '';
let id = '';
const wood = { surface: 'wood-on-joists', own: null } as const;
const parlour = roomDraftSchema.parse({
  cycle: 1, name: 'Parlour, invented', plan: { shape: 'box', lengthMm: 6000, widthMm: 4500 }, heightMm: 2800, floor: wood, ceiling: wood, walls: [wood, wood, wood, wood], use: 'music',
});

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'wrestplank-room-'));
  opened = await openStore({ dataDir: path.join(folder, 'data'), clock: () => new Date(), newId: randomUUID });
  ({ id } = await opened.addPiano(SHOP, { name: 'Roomed, invented', kind: 'grand', lengthMm: 1830 }, 'test'));
}, 120_000);
afterAll(async () => {
  await opened?.close();
  await rm(folder, { recursive: true, force: true });
});

/** Runs one command here and gives back what it wrote. */
async function runCommand(...words: readonly string[]): Promise<{ readonly code: number; readonly out: string; readonly err: string }> {
  const [out, err]: [Buffer[], Buffer[]] = [[], []];
  const catching = (into: Buffer[]) => (chunk: string | Uint8Array) => into.push(Buffer.from(chunk)) > 0;
  const spies = [vi.spyOn(process.stdout, 'write').mockImplementation(catching(out)), vi.spyOn(process.stderr, 'write').mockImplementation(catching(err))];
  try {
    const code = await runProgram([...words, '--data', path.join(folder, 'data')]);
    return { code, out: Buffer.concat(out).toString('utf8'), err: Buffer.concat(err).toString('utf8') };
  } finally {
    spies.forEach((spy) => { spy.mockRestore(); });
  }
}

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
