// A process of its own that opens a data folder with the built store. Told to write, it writes readings until it is killed,
// and says each one on a line of its own only after the store has acknowledged it.
import { randomUUID } from 'node:crypto';
import { writeSync } from 'node:fs';
import { openStore } from '../../../dist/store/index.js';

const [dataDir, instrument, round] = process.argv.slice(2);
const say = (line) => writeSync(1, `${line}\n`);

try {
  const store = await openStore({ dataDir, clock: () => new Date(), newId: randomUUID });
  say('open');
  if (instrument === undefined) setInterval(() => undefined, 1000);
  else await Promise.all([1, 2, 3].map((writer) => write(store, writer)));
} catch (error) {
  say(`failed ${error.reason ?? 'unknown'} ${error.message}`);
  process.exitCode = 1;
}

async function write(store, writer) {
  for (let turn = 0; ; turn += 1) {
    const remark = `${round}/${writer}/${turn}`;
    const entries = [{ quantity: 'downWeightG', scope: 'key', index: 1 + ((turn + 29 * writer) % 88), typed: String(40 + (turn % 20)), remark }];
    const { seq, readings } = await store.writeReadings(instrument, { cycle: 1, state: 'found', entries }, 'child');
    say(`wrote ${seq} ${readings[0].id} ${remark}`);
  }
}
