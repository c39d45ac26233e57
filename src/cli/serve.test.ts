import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { SHOP } from '#store';
import type { Answer } from '#workshop';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { endCommands, runCommand, startCommand } from './testing/run-command.ts';
import { findInstrument, withStore } from './with-store.ts';

let data = '';
beforeEach(async () => {
  data = await mkdtemp(path.join(tmpdir(), 'wrestplank-serve-'));
});
afterEach(async () => {
  await endCommands();
  await rm(data, { recursive: true, force: true });
});

/** These start many processes, each with a database of its own: on a busy machine that takes its time. */
const PATIENCE_MS = 600_000;

/** Starts `serve` on any free port and answers its address, as it says it on standard output. */
async function startServing(...words: readonly string[]) {
  const child = startCommand(['serve', '--port', '0', '--data', data, ...words]);
  child.stderr?.resume();
  const said = await new Promise<string>((resolve, reject) => {
    child.stdout?.once('data', (bytes: Buffer) => { resolve(bytes.toString()); });
    child.once('exit', (code) => { reject(new Error(`serve ended with ${String(code)}`)); });
  });
  const url = /http:\/\/127\.0\.0\.1:\d+/u.exec(said)?.[0] ?? '';
  return { child, url, said };
}

async function endOf(child: ReturnType<typeof startCommand>, signal: NodeJS.Signals): Promise<number | null> {
  const ended = once(child, 'exit') as Promise<[number | null]>;
  child.kill(signal);
  return (await ended)[0];
}

describe('serving the bench book', () => {
  it('opens with the demonstration, holds its folder alone, closes in order, and a removed demonstration stays away', async () => {
    const first = await startServing('--demo');
    const { pianos } = (await (await fetch(`${first.url}/api/pianos`)).json()) as Answer<'listPianos'>;
    expect(pianos.map(({ instrument }) => instrument.demo)).toEqual([true, true]);

    const second = await runCommand(['pianos', '--data', data]);
    expect([second.code, second.out]).toEqual([1, '']);
    expect(second.err).toContain(data);
    const third = await runCommand(['serve', '--port', '0', '--data', data]);
    expect([third.code, third.out]).toEqual([1, '']);

    expect((await fetch(`${first.url}/api/demo`, { method: 'DELETE' })).status).toBe(200);
    expect(await endOf(first.child, 'SIGTERM')).toBe(0);

    const again = await startServing('--demo');
    expect(((await (await fetch(`${again.url}/api/pianos`)).json()) as Answer<'listPianos'>).pianos).toEqual([]);
    expect(await endOf(again.child, 'SIGINT')).toBe(0);
    expect((await runCommand(['pianos', '--data', data, '--json'])).out.replaceAll(/\s/gu, '')).toBe('[]');
  }, PATIENCE_MS);

  it('says when its port is taken', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await once(other, 'listening');
    const { port } = other.address() as AddressInfo;
    const { code, out, err } = await runCommand(['serve', '--port', String(port), '--data', data]);
    other.close();
    expect([code, out]).toEqual([1, '']);
    expect(err).toContain(String(port));
  });
});

describe('the store at the command line', () => {
  it('adds, lists, audits and removes the demonstration', async () => {
    expect((await runCommand(['demo', 'add', '--data', data])).code).toBe(0);
    const listed = JSON.parse((await runCommand(['pianos', '--data', data, '--json'])).out) as Answer<'listPianos'>['pianos'];
    const { id, name } = listed[0]?.instrument ?? { id: '', name: '' };
    expect(JSON.parse((await runCommand(['audit', name, '--data', data, '--json'])).out)).toMatchObject({ whole: true });
    await withStore({ data }, async (store) => {
      for (const named of [id, id.slice(0, 8), name]) expect((await findInstrument(store, named)).id).toBe(id);
      await expect(findInstrument(store, 'Nobody’s grand')).rejects.toMatchObject({ exitCode: 2, problem: { status: 404 } });
      await store.addPiano(SHOP, { name, kind: 'grand' }, 'test');
      await expect(findInstrument(store, name)).rejects.toMatchObject({ exitCode: 2, problem: { status: 422 } });
    });
    expect(JSON.parse((await runCommand(['demo', 'remove', '--data', data, '--json'])).out)).toEqual({ removed: 2 });
  }, PATIENCE_MS);
});
