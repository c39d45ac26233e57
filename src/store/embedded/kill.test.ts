import { randomUUID } from 'node:crypto';
import { rmSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { SHOP, openStore } from '../index.ts';
import { type Child, startChild } from '../testing/child.ts';
import { testFolder } from '../testing/engines.ts';
import { makeTemplate } from './template.ts';

const LANES = 2;
const KILLS_EACH = 25;
const surroundings = { clock: () => new Date(), newId: randomUUID };

/** A tenth of the kills fall into the start, before anything is written; the rest after some writes, in the midst of others. */
async function killSometime(child: Child, round: number): Promise<void> {
  if (round % 10 === 9) await wait(Math.random() * 900);
  else {
    await child.wrote(1 + Math.floor(Math.random() * 12));
    await wait(Math.random() * 20);
  }
  await child.kill();
}

async function lane(dataDir: string): Promise<{ readonly acknowledged: ReadonlyMap<string, number>; readonly instrument: string }> {
  const first = await openStore({ ...surroundings, dataDir });
  const { id: instrument } = await first.addPiano(SHOP, { name: 'Killed at', kind: 'grand' }, 'p1');
  await first.close();
  const acknowledged = new Map<string, number>();
  for (let round = 0; round < KILLS_EACH; round += 1) {
    const child = startChild(dataDir, instrument, String(round));
    await killSometime(child, round);
    expect(child.process.signalCode, child.lines.join('\n')).toBe('SIGKILL');
    for (const line of child.lines) {
      const [, seq, id] = /^wrote (\d+) (\S+) /u.exec(line) ?? [];
      if (id !== undefined) acknowledged.set(id, Number(seq));
    }
  }
  return { acknowledged, instrument };
}

describe('a process killed while it writes', () => {
  it(`loses no acknowledged reading in ${String(LANES * KILLS_EACH)} kills, and leaves every chain whole`, { timeout: 900_000 }, async () => {
    await makeTemplate();
    const folders = Array.from({ length: LANES }, testFolder);
    const results = await Promise.all(folders.map(lane));
    let total = 0;
    for (const [at, { acknowledged, instrument }] of results.entries()) {
      const store = await openStore({ ...surroundings, dataDir: folders[at] ?? '' });
      const written = new Map<string, number>();
      for (let before: number | undefined; ; ) {
        const events = await store.listEvents(instrument, { ...(before === undefined ? {} : { before }), limit: 500 });
        for (const { seq, changes } of events) for (const { after } of changes) written.set((after as { id: string }).id, seq);
        before = events.at(-1)?.seq;
        if (before === undefined || before === 1) break;
      }
      const rows = new Set((await Promise.all(Array.from({ length: 88 }, (_, key) => store.readingHistory(instrument, { cycle: 1, state: 'found', quantity: 'downWeightG', index: key + 1 })))).flat().map(({ id }) => id));
      const lost = [...acknowledged].filter(([id, seq]) => written.get(id) !== seq || !rows.has(id));
      expect(lost).toEqual([]);
      expect(await store.audit(instrument)).toMatchObject({ whole: true });
      total += acknowledged.size;
      await store.close();
    }
    folders.forEach((folder) => { rmSync(folder, { recursive: true, force: true }); });
    console.info(`${String(LANES * KILLS_EACH)} kills, ${String(total)} acknowledged readings, none lost`);
    expect(total).toBeGreaterThan(LANES * KILLS_EACH);
  });
});
