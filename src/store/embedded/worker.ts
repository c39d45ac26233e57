import { type MessagePort, parentPort, workerData } from 'node:worker_threads';
import { PGlite } from '@electric-sql/pglite';
import { DurableFiles, type Watch } from './durable-files.ts';
import { Frames, joined } from './frames.ts';
import type { EngineStart, FromEngine, ToEngine } from './wire.ts';

/** The engine's own start parameters, less `-F`, which would turn fsync off. */
const startParams = [
  ...PGlite.defaultStartParams.filter((parameter) => parameter !== '-F'),
  ...['fsync=on', 'wal_sync_method=fsync', 'full_page_writes=on', 'synchronous_commit=on'].flatMap((setting) => ['-c', setting]),
];

const QUERY = 0x51;
const TERMINATE = 0x58;

/** A simple query as a message, for the little the thread asks by itself. */
function queryMessage(text: string): Uint8Array {
  const words = new TextEncoder().encode(`${text}\0`);
  const message = new Uint8Array(5 + words.length);
  message[0] = QUERY;
  new DataView(message.buffer).setUint32(1, 4 + words.length);
  message.set(words, 5);
  return message;
}

async function serve(port: MessagePort, { folder, syncs }: EngineStart): Promise<void> {
  const say = (message: FromEngine): void => { port.postMessage(message); };
  const counter = new Int32Array(syncs);
  const watch: Watch = {
    synced: () => void Atomics.add(counter, 0, 1),
    aborted: () => {
      say({ kind: 'broken', message: 'it stopped because its files could not be written; is the disk full?' });
      return process.exit(1);
    },
  };
  const engine = await PGlite.create({ fs: new DurableFiles(folder, watch), startParams });
  const frames = new Frames();

  const run = async (message: Uint8Array): Promise<Uint8Array> => {
    const pieces: Uint8Array[] = [];
    await engine.execProtocolRawStream(message, { syncToFs: false, onRawData: (bytes) => pieces.push(bytes.slice()) });
    return joined(pieces);
  };
  /** The one session goes from caller to caller: a new one finds neither an open transaction nor settings of the last. */
  const clean = async (): Promise<void> => {
    frames.reset();
    if (engine.isInTransaction()) await run(queryMessage('ROLLBACK'));
    await run(queryMessage('DISCARD ALL'));
  };
  const answer = async (bytes: Uint8Array): Promise<void> => {
    const messages = frames.take(bytes).filter(([type]) => type !== TERMINATE);
    const answers: Uint8Array[] = [];
    for (const message of messages) answers.push(await run(message));
    if (answers.length > 0) say({ kind: 'bytes', bytes: joined(answers) });
  };
  const act = async (message: ToEngine): Promise<void> => {
    if (message.kind === 'bytes') return answer(message.bytes);
    if (message.kind === 'hangUp') return clean();
    await engine.close();
    say({ kind: 'stopped' });
    port.close();
  };

  let last = Promise.resolve();
  port.on('message', (message: ToEngine) => {
    last = last.then(() => act(message)).catch((error: unknown) => { say({ kind: 'broken', message: String(error) }); });
  });
  say({ kind: 'ready' });
}

if (parentPort !== null) {
  const port = parentPort;
  serve(port, workerData as EngineStart).catch((error: unknown) => {
    port.postMessage({ kind: 'broken', message: error instanceof Error ? error.message : String(error) } satisfies FromEngine);
    port.close();
  });
}
