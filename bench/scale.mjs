/**
 * Requests of a shop with 10,000 pianos and 1,000,000 readings over HTTP, one after the other: embedded store and PostgreSQL server. The
 * rows are copies of one piano written through the program, laid in by SQL. The budget is 100 ms at the 95th percentile for each request.
 */
import { spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import pg from 'pg';
import { runnerImport } from 'vite';
import { SHOP, openStore } from '#store';
import { report, spreadOf, timesOf } from './measure.mjs';

const PIANOS = 10_000;
const READINGS = 100;
/** Every so many pianos has jobs to do. */
const BUSY = 200;
const RUNS = 100;
const BUDGET_MS = 100;
const root = path.resolve(import.meta.dirname, '..');
const source = async (file) => (await runnerImport(path.join(root, file), { configFile: false })).module;
const main = path.join(root, 'dist/cli/main.js');
const folder = mkdtempSync(path.join(tmpdir(), 'wrestplank-bench-'));

/** One piano with all that is copied. */
async function writeFirst(place) {
  const store = await openStore({ ...place, clock: () => new Date(), newId: randomUUID });
  const { id } = await store.addPiano(SHOP, { name: 'Piano 0', kind: 'grand' }, 'bench');
  const entries = Array.from({ length: READINGS }, (_, index) => ({ quantity: index < 88 ? 'downWeightG' : 'upWeightG', scope: 'key', index: 1 + (index % 88), typed: String(45 + (index % 9)) }));
  await store.writeReadings(id, { cycle: 1, state: 'found', entries }, 'bench');
  await store.addWork(id, Array.from({ length: 10 }, (_, index) => ({ cycle: 1, key: index + 1, remedy: 'addLead', stage: 4 })), 'bench');
  const { id: stock } = await store.addShopCard(SHOP, { kind: 'stock', what: 'wire', name: 'Wire', unit: 'm' }, 'bench');
  for (let move = 0; move < 20; move += 1) await store.addShopCard(SHOP, { kind: 'stockMove', stock, on: '2031-01-01', amount: 5, reason: 'bought' }, 'bench');
  await store.close();
  return { id, stock };
}

/** Copies of the first piano, each under an id of its own; jobs at every two-hundredth. */
function copies(id) {
  const numbers = `generate_series(1, ${PIANOS - 1}) n`;
  const own = `'p' || n`;
  return [
    `insert into chain_head (workshop, instrument, seq, hash, at) select workshop, ${own}, seq, hash, at - n * interval '1 minute' from chain_head, ${numbers} where instrument = '${id}'`,
    `insert into event (workshop, instrument, seq, at, undoes, undone_by, touched, used, text, hash) select workshop, ${own}, seq, at - n * interval '1 minute', undoes, undone_by, array[]::text[], array[]::text[], '{}', hash from event, ${numbers} where instrument = '${id}'`,
    `insert into card (workshop, instrument, entity, place, body, standing, made_seq, made_index, changed_seq)
       select workshop, ${own}, entity, case entity when 'instrument' then ${own} else place || '-' || n end,
         body || jsonb_build_object('id', case entity when 'instrument' then ${own} else place || '-' || n end) || case entity when 'instrument' then jsonb_build_object('name', 'Piano ' || n) else '{}' end,
         standing, made_seq, made_index, changed_seq
       from card, ${numbers} where instrument = '${id}' and (entity <> 'work' or n % ${BUSY} = 0)`,
    `insert into reading (workshop, instrument, id, seq, place, cycle, state, quantity, scope, index, repeat, typed, value, outcome, uncertainty, basis, remark, session_id, at, typed_at, by, standing, withdrawn, superseded_by)
       select workshop, ${own}, id, seq, place, cycle, state, quantity, scope, index, repeat, typed, value, outcome, uncertainty, basis, remark, session_id, at, typed_at, by, standing, withdrawn, superseded_by
       from reading, ${numbers} where instrument = '${id}'`,
    'analyze',
  ];
}

/** What a page of the shop asks for. */
function requestsOf(url, { id, stock }) {
  const get = (address) => () => fetched(url + address);
  let count = 0;
  const piano = () => `p${String(1 + (count++ * 97) % (PIANOS - 1))}`;
  const write = (address, body) => fetched(url + address, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) });
  return {
    firstPage: get('/api/pianos?limit=60'),
    byName: get('/api/pianos?limit=60&words=777'),
    names: get('/api/piano-names'),
    health: get('/api/health'),
    piano: () => fetched(`${url}/api/pianos/${piano()}`),
    readings: () => fetched(`${url}/api/pianos/${piano()}/readings?cycle=1`),
    writeReading: () => write(`/api/pianos/${id}/readings`, { cycle: 1, state: 'finished', entries: [{ quantity: 'downWeightG', scope: 'key', index: 1 + (count++ % 88), typed: '47' }] }),
    bench: get('/api/bench'),
    shop: get('/api/shop'),
    takeFromStock: () => write('/api/shop/cards', { kind: 'stockMove', stock, on: '2031-01-02', amount: -0.1, reason: 'used' }),
  };
}

async function fetched(address, init) {
  const response = await fetch(address, init);
  const text = await response.text();
  if (!response.ok) throw new Error(`${address}: ${String(response.status)} ${text.slice(0, 300)}`);
}

/** Spreads of each request to a program of its own process. */
async function measured(environment, dataDir, first) {
  const child = spawn(process.execPath, [main, 'serve', '--port', '0', ...(dataDir === undefined ? [] : ['--data', dataDir])], { env: { ...process.env, ...environment }, stdio: ['ignore', 'pipe', 'inherit'] });
  const url = await new Promise((resolve, reject) => {
    child.once('exit', () => { reject(new Error('the program ended')); });
    let said = '';
    child.stdout.on('data', (text) => {
      said += String(text);
      const found = /http:\/\/127\.0\.0\.1:\d+/u.exec(said)?.[0];
      if (found !== undefined) resolve(found);
    });
  });
  try {
    const spreads = {};
    for (const [name, work] of Object.entries(requestsOf(url, first))) spreads[name] = spreadOf(await timesOf(work, { runs: RUNS }));
    return spreads;
  } finally {
    child.kill('SIGTERM');
    await once(child, 'close');
  }
}

const { startServer, asked } = await source('src/store/testing/server.ts');
const { startEngine } = await source('src/store/embedded/engine.ts');
const dataDir = path.join(folder, 'data');
const embeddedFirst = await writeFirst({ dataDir });
const engine = await startEngine(path.join(dataDir, 'database'));
for (const statement of copies(embeddedFirst.id)) await engine.pool.query(statement);
const [{ pianos, readings }] = (await engine.pool.query(`select (select count(*)::int from card where entity = 'instrument') pianos, (select count(*)::int from reading) readings`)).rows;
await engine.stop();
const embedded = await measured({ WRESTPLANK_DATABASE_URL: '' }, dataDir, embeddedFirst);
const server = await startServer();
const serverFirst = await writeFirst({ databaseUrl: server.databaseUrl, photosDir: path.join(folder, 'photos'), recordingsDir: path.join(folder, 'recordings') });
await asked(server.databaseUrl, ...copies(serverFirst.id));
const client = new pg.Client({ connectionString: server.databaseUrl });
await client.connect();
const [{ version }] = (await client.query(`select current_setting('server_version') version`)).rows;
await client.end();
const onServer = await measured({ WRESTPLANK_DATABASE_URL: server.databaseUrl, WRESTPLANK_DATA: path.join(folder, 'files') }, undefined, serverFirst);
await server.stop();
rmSync(folder, { recursive: true, force: true });
const slowest = (spreads) => Math.max(...Object.values(spreads).map(({ p95 }) => p95));
report('scale', { unit: 'ms a request', pianos, readings, budgetMs: BUDGET_MS, slowestP95: { embedded: slowest(embedded), server: slowest(onServer) }, serverVersion: version, embedded, server: onServer });
