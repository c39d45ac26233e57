/** One reading written and acknowledged: embedded store and PostgreSQL server in turns, against one bare fsync of a page to a file: the bound. */
import { randomUUID } from 'node:crypto';
import { closeSync, fsyncSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { runnerImport } from 'vite';
import { SHOP, openStore } from '#store';
import { report, spreadOf, timesOf } from './measure.mjs';

const RUNS = 200;
const { module } = await runnerImport(path.resolve(import.meta.dirname, '../src/store/testing/server.ts'), { configFile: false });
const server = await module.startServer();
const folder = mkdtempSync(path.join(tmpdir(), 'wrestplank-bench-'));
const file = openSync(path.join(folder, 'bound'), 'w');
const page = Buffer.alloc(8192, 1);

/** A writer of one more reading on a store of its own. */
async function writerOn(place) {
  const store = await openStore({ ...place, clock: () => new Date(), newId: randomUUID });
  const piano = await store.addPiano(SHOP, { name: 'Bench', kind: 'grand' }, 'bench');
  let count = 0;
  const write = () => {
    count += 1;
    return store.writeReadings(piano.id, { cycle: 1, state: 'found', entries: [{ quantity: 'downWeightG', scope: 'key', index: 1 + (count % 88), typed: String(45 + (count % 9)) }] }, 'bench');
  };
  return { write, store };
}

const embedded = await writerOn({ dataDir: path.join(folder, 'data') });
const remote = await writerOn({ databaseUrl: server.databaseUrl });
const bound = () => {
  writeSync(file, page, 0, page.length, 0);
  fsyncSync(file);
};
const times = { embedded: [], server: [], bound: [] };
for (let run = 0; run < RUNS + 20; run += 1) {
  const round = { embedded: await timesOf(embedded.write, { runs: 1, warm: 0 }), server: await timesOf(remote.write, { runs: 1, warm: 0 }), bound: await timesOf(bound, { runs: 1, warm: 0 }) };
  if (run >= 20) for (const [name, [ms]] of Object.entries(round)) times[name].push(ms);
}
await embedded.store.close();
await remote.store.close();
await server.stop();
closeSync(file);
rmSync(folder, { recursive: true, force: true });
const [a, b, c] = [spreadOf(times.embedded), spreadOf(times.server), spreadOf(times.bound)];
report('commit-latency', { unit: 'ms a reading', embedded: a, server: b, bareFsync: c, embeddedToServer: a.median / b.median, embeddedToBound: a.median / c.median });
