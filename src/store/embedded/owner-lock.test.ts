import { randomUUID } from 'node:crypto';
import { mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { SHOP, openStore } from '../index.ts';
import { startChild } from '../testing/child.ts';
import { testFolder } from '../testing/engines.ts';
import { failureOf } from '../testing/failure.ts';
import { ownFolder } from './owner-lock.ts';
import { makeTemplate } from './template.ts';

const surroundings = { clock: () => new Date(), newId: randomUUID };

describe('a data folder', () => {
  let dataDir: string;
  beforeEach(() => void (dataDir = testFolder()));
  afterEach(() => { rmSync(dataDir, { recursive: true, force: true }); });
  const open = () => openStore({ ...surroundings, dataDir });

  it('belongs to one process: a second one is told so, and nothing is harmed', async () => {
    await makeTemplate();
    const child = startChild(dataDir);
    await child.said('open');
    const failure = await failureOf(open());
    expect(failure.reason).toBe('inUse');
    expect(failure.message).toBe(`The data folder ${dataDir} is already open in another Wrestplank (process ${String(child.process.pid)}). Use that one, or end it first, or name another folder.`);
    await child.kill();
    const store = await open();
    const piano = await store.addPiano(SHOP, { name: 'Kept', kind: 'grand' }, 'p1');
    const second = startChild(dataDir);
    expect(await second.said('failed')).toContain(`failed inUse The data folder ${dataDir} is already open in another Wrestplank (process ${String(process.pid)})`);
    await second.kill();
    expect((await store.audit(piano.id)).whole).toBe(true);
    await store.close();
    const reopened = await open();
    expect((await reopened.getPiano(piano.id)).instrument).toEqual(piano);
    await reopened.close();
  });

  it('belongs to one opener of the same process, by whatever path', async () => {
    const letGo = await ownFolder(dataDir);
    const other = `${dataDir}-by-another-name`;
    symlinkSync(dataDir, other);
    expect((await failureOf(ownFolder(other))).reason).toBe('inUse');
    await letGo();
    rmSync(other);
    await (await ownFolder(dataDir))();
  });

  it('of several who come at once, belongs to one', async () => {
    const outcomes = await Promise.allSettled(Array.from({ length: 6 }, () => ownFolder(dataDir)));
    const owners = outcomes.flatMap((outcome) => (outcome.status === 'fulfilled' ? [outcome.value] : []));
    expect(owners).toHaveLength(1);
    for (const letGo of owners) await letGo();
  });

  it('is not kept by the lock file of a process that is gone from this machine', async () => {
    const letGo = await ownFolder(dataDir);
    const left = readFileSync(join(dataDir, 'owner.json'), 'utf8');
    await letGo();
    writeFileSync(join(dataDir, 'owner.json'), left);
    await (await ownFolder(dataDir))();
  });

  it('is kept by another machine while its count grows, and taken over once that stands still', async () => {
    const file = join(dataDir, 'owner.json');
    let beats = 0;
    const beat = () => { writeFileSync(file, JSON.stringify({ process: 4711, machine: 'elsewhere', token: 'theirs', beats: (beats += 1) })); };
    mkdirSync(dataDir, { recursive: true });
    beat();
    const beating = setInterval(beat, 100);
    const failure = await failureOf(ownFolder(dataDir, 300));
    clearInterval(beating);
    expect(failure).toMatchObject({ reason: 'inUse' });
    expect(failure.message).toContain('process 4711 on another machine or in another container');
    const letGo = await ownFolder(dataDir, 300);
    expect(JSON.parse(readFileSync(file, 'utf8'))).toMatchObject({ process: process.pid });
    await letGo();
  });
});
