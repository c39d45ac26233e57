import { Duplex } from 'node:stream';
import type { Worker } from 'node:worker_threads';
import type { FromEngine, ToEngine } from './wire.ts';

/** Begins as the client library's own words for a lost connection, so that both are understood alike. */
const GONE = 'Connection terminated: the embedded database has stopped';

/**
 * The engine's thread dressed as the network socket that the `pg` client expects.
 * So one client library, one driver and one set of queries serve the embedded engine and the server alike.
 */
export class WireSocket extends Duplex {
  readonly #engine: Worker;
  readonly #listen = (message: FromEngine): void => {
    if (message.kind === 'bytes') this.push(message.bytes);
    if (message.kind === 'broken') this.destroy(new Error(`${GONE}: ${message.message}`));
    if (message.kind === 'stopped') this.destroy();
  };

  constructor(engine: Worker) {
    super();
    this.#engine = engine;
    engine.on('message', this.#listen);
    engine.once('exit', this.#gone);
  }

  readonly #gone = (): void => void this.destroy(new Error(GONE));

  #tell(message: ToEngine): void {
    this.#engine.postMessage(message);
  }

  connect(): this {
    if (this.#engine.threadId === -1) return this.destroy(new Error(GONE));
    this.#tell({ kind: 'hangUp' });
    queueMicrotask(() => this.emit('connect'));
    return this;
  }

  override _write(bytes: Uint8Array, _encoding: BufferEncoding, done: (error?: Error | null) => void): void {
    this.#tell({ kind: 'bytes', bytes });
    done();
  }

  override _writev(chunks: readonly { readonly chunk: Uint8Array }[], done: (error?: Error | null) => void): void {
    this.#tell({ kind: 'bytes', bytes: Buffer.concat(chunks.map(({ chunk }) => chunk)) });
    done();
  }

  override _read(): void {
    // Answers are pushed as they come.
  }

  override _final(done: (error?: Error | null) => void): void {
    done();
    this.push(null);
  }

  override _destroy(error: Error | null, done: (error?: Error | null) => void): void {
    this.#engine.off('message', this.#listen);
    this.#engine.off('exit', this.#gone);
    done(error);
  }

  /** A socket has these; a thread needs none of them. */
  setNoDelay(): this { return this; }
  setKeepAlive(): this { return this; }
  ref(): this { return this; }
  unref(): this { return this; }
}
