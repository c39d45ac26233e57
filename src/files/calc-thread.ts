import { parentPort } from 'node:worker_threads';
import { operationByName } from '#catalogue';
import { runHere } from '#operation';
import { readRecording } from '#recording';
import { type Result, map, refuse } from '#result';
import type { ThreadCase } from './calc-desk.ts';

/** Runs the case a desk hands over, its recordings being bytes. */
async function workOut({ operation: name, input }: ThreadCase): Promise<Result<unknown>> {
  const operation = operationByName(name);
  if (operation === undefined) throw new Error(`no operation ${name}`);
  return runHere(operation, async (given) =>
    given instanceof Uint8Array ? map(await readRecording(given), ({ samples }) => samples) : refuse({ code: 'type', path: '', given, allowed: 'a recording', params: { kind: 'sound' } }),
  )(input);
}

parentPort?.on('message', (given: ThreadCase) => {
  void workOut(given).then((result) => parentPort?.postMessage(result));
});
