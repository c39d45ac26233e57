import { createHash, randomUUID } from 'node:crypto';
import { closeSync, createReadStream, existsSync, fsyncSync, mkdirSync, openSync, readFileSync, renameSync, rmSync, statSync, writeSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type ByteRange, StoreFailure } from './bench-store.ts';
import { syncFolder } from './sync.ts';

/** Bytes as they were kept: found by their own hash, so that none is kept twice and none can change. */
export interface KeptBytes {
  readonly hash: string;
  readonly byteCount: number;
}

/** Where bytes lie that are too many for the database: files named by their hash. */
export interface Blobs {
  has(hash: string): boolean;
  /** Keeps bytes; on the disk when it answers. */
  keep(bytes: Uint8Array): KeptBytes;
  /** Keeps bytes as they come, never all of them in memory. What `check` throws stops it, and nothing is kept. */
  keepStream(pieces: AsyncIterable<Uint8Array>, check: (byteCount: number) => void): Promise<KeptBytes>;
  /** @throws StoreFailure `notFound`. */
  read(hash: string): Uint8Array;
  /** How many bytes there are. @throws StoreFailure `notFound`. */
  sizeOf(hash: string): number;
  /** The bytes from `start` to `end`, both included, as they come off the disk. @throws StoreFailure `notFound`. */
  readStream(hash: string, range?: ByteRange): AsyncIterable<Uint8Array>;
}

/** Bytes in a folder, in subfolders by the first two letters of their hash. `what` names them in a refusal. */
export function blobsIn(folder: string, what: string): Blobs {
  const fileOf = (hash: string): string => join(folder, hash.slice(0, 2), hash);
  const has = (hash: string): boolean => /^[0-9a-f]{64}$/u.test(hash) && existsSync(fileOf(hash));
  const there = (hash: string): string => {
    if (!has(hash)) throw new StoreFailure('notFound', `There is no ${what} ${hash}.`);
    return fileOf(hash);
  };
  const moveInto = (unfinished: Unfinished): KeptBytes => {
    const kept = unfinished.end();
    if (has(kept.hash)) unfinished.drop();
    else placeWhole(unfinished.file, fileOf(kept.hash));
    return kept;
  };
  return {
    has,
    keep: (bytes) => {
      const unfinished = beginIn(folder);
      return keeping(unfinished, () => {
        unfinished.write(bytes);
        return moveInto(unfinished);
      });
    },
    keepStream: async (pieces, check) => {
      const unfinished = beginIn(folder);
      try {
        for await (const piece of pieces) check(unfinished.write(piece));
        return moveInto(unfinished);
      } catch (error) {
        unfinished.drop();
        throw error;
      }
    },
    read: (hash) => readFileSync(there(hash)),
    sizeOf: (hash) => statSync(there(hash)).size,
    readStream: (hash, range) => piecesOf(there(hash), range),
  };
}

/** A file is opened when its first piece is asked for, and closed however the asking ends. */
async function* piecesOf(file: string, range?: ByteRange): AsyncIterable<Uint8Array> {
  yield* createReadStream(file, range) as AsyncIterable<Uint8Array>;
}

/** A book with no folder for bytes of a kind: it keeps none and says so. */
export function noBlobs(what: string, many: string): Blobs {
  const none = (hash: string): never => {
    throw new StoreFailure('notFound', `There is no ${what} ${hash}.`);
  };
  const unkept = (): never => {
    throw new StoreFailure('unavailable', `No folder for ${many} is named; nothing was kept.`);
  };
  return { has: () => false, keep: unkept, keepStream: () => Promise.resolve().then(unkept), read: none, sizeOf: none, readStream: none };
}

/** Bytes on their way to the disk under a name of their own. */
interface Unfinished {
  readonly file: string;
  /** Writes and answers how many bytes there are now. */
  write(bytes: Uint8Array): number;
  /** Brings them to the disk and answers what they are. */
  end(): KeptBytes;
  drop(): void;
}

function beginIn(folder: string): Unfinished {
  mkdirSync(folder, { recursive: true });
  const file = join(folder, `unfinished.${randomUUID()}`);
  const opened = openSync(file, 'wx');
  const hash = createHash('sha256');
  let byteCount = 0;
  let isOpen = true;
  const close = (): void => {
    if (isOpen) closeSync(opened);
    isOpen = false;
  };
  return {
    file,
    write: (bytes) => {
      for (let at = 0; at < bytes.byteLength;) at += writeSync(opened, bytes, at);
      hash.update(bytes);
      return (byteCount += bytes.byteLength);
    },
    end: () => {
      fsyncSync(opened);
      close();
      return { hash: hash.digest('hex'), byteCount };
    },
    drop: () => {
      close();
      rmSync(file, { force: true });
    },
  };
}

function keeping<T>(unfinished: Unfinished, work: () => T): T {
  try {
    return work();
  } catch (error) {
    unfinished.drop();
    throw error;
  }
}

/** Moved to its place in one step: it is whole or not there. */
function placeWhole(unfinished: string, file: string): void {
  const folder = dirname(file);
  mkdirSync(folder, { recursive: true });
  renameSync(unfinished, file);
  syncFolder(folder);
}
