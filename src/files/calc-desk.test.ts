import { operationByName } from '#catalogue';
import { openCalcDesk } from '#files';
import { writeWav } from '#recording';
import { afterAll, describe, expect, it } from 'vitest';

const desk = openCalcDesk({ threads: 1, mostMs: 60_000 });
afterAll(() => desk.close());

const bytesOf = (name: string): Uint8Array => {
  const sound = operationByName(name)?.exampleSound?.();
  if (sound === undefined) throw new Error(`${name} takes no recording`);
  return writeWav(sound);
};

describe('threads that work recordings out', () => {
  it('answer one case after another on the same thread', async () => {
    for (const name of ['recording-level', 'tone-note', 'recording-level']) expect(await desk.run(name, { file: bytesOf(name) })).toMatchObject({ ok: true });
  });

  it('answer cases that were asked at once, and what is refused spoils none', async () => {
    const results = await Promise.all([desk.run('recording-level', { file: new Uint8Array(40) }), desk.run('recording-level', { file: bytesOf('recording-level') })]);
    expect(results.map(({ ok }) => ok)).toEqual([false, true]);
  });

  it('go on after a thread has failed', async () => {
    await expect(desk.run('no-such-calculation', {})).rejects.toThrow();
    expect(await desk.run('recording-level', { file: bytesOf('recording-level') })).toMatchObject({ ok: true });
  });
});
