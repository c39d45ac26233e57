import { PHOTO_LIMIT_BYTES } from '#instrument';
import { createHash, randomUUID } from 'node:crypto';
import { closeSync, existsSync, fsyncSync, mkdirSync, openSync, readFileSync, renameSync, writeSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type KeptPhoto, type PhotoType, type ReadPhoto, StoreFailure } from './bench-store.ts';
import { syncFolder } from './sync.ts';

/** Where photos lie: files named by their hash. */
export interface Photos {
  has(hash: string): boolean;
  /** Keeps a photo; on the disk when it answers. @throws StoreFailure `refused` for what is no photo or too large. */
  keep(bytes: Uint8Array): KeptPhoto;
  /** The bytes of a photo and their type. @throws StoreFailure `notFound`. */
  read(hash: string): ReadPhoto;
}

/** Photos in a folder, in subfolders by the first two letters of their hash. */
export function photosIn(folder: string): Photos {
  const fileOf = (hash: string): string => join(folder, hash.slice(0, 2), hash);
  const has = (hash: string): boolean => /^[0-9a-f]{64}$/u.test(hash) && existsSync(fileOf(hash));
  return {
    has,
    keep: (bytes) => {
      const type = checkedType(bytes);
      const hash = createHash('sha256').update(bytes).digest('hex');
      if (!has(hash)) writeWhole(fileOf(hash), bytes);
      return { hash, type, byteCount: bytes.byteLength };
    },
    read: (hash) => {
      if (!has(hash)) throw new StoreFailure('notFound', `There is no photo ${hash}.`);
      const bytes = readFileSync(fileOf(hash));
      return { bytes, type: checkedType(bytes) };
    },
  };
}

/** A book with no folder for photos: it keeps none and says so. */
export const noPhotos: Photos = {
  has: () => false,
  keep: () => {
    throw new StoreFailure('unavailable', 'No folder for photos is named; nothing was kept.');
  },
  read: (hash) => {
    throw new StoreFailure('notFound', `There is no photo ${hash}.`);
  },
};

/** Brought to the disk beside its place and moved there in one step: a photo is whole or not there. */
function writeWhole(file: string, bytes: Uint8Array): void {
  const folder = dirname(file);
  mkdirSync(folder, { recursive: true });
  const unfinished = `${file}.${randomUUID()}`;
  const opened = openSync(unfinished, 'wx');
  try {
    for (let at = 0; at < bytes.byteLength;) at += writeSync(opened, bytes, at);
    fsyncSync(opened);
  } finally {
    closeSync(opened);
  }
  renameSync(unfinished, file);
  syncFolder(folder);
}

const starts = (bytes: Uint8Array, text: string, at = 0): boolean => Buffer.from(bytes.subarray(at, at + text.length)).toString('latin1') === text;

function checkedType(bytes: Uint8Array): PhotoType {
  const refuse = (code: 'format' | 'length', given: string, allowed: string): never => {
    throw new StoreFailure('refused', 'The photo cannot be kept.', [{ code, path: 'photo', given, allowed }]);
  };
  if (bytes.byteLength > PHOTO_LIMIT_BYTES) refuse('length', `${String(bytes.byteLength)} bytes`, `at most ${String(PHOTO_LIMIT_BYTES)} bytes`);
  if (starts(bytes, '\u00ff\u00d8\u00ff')) return 'image/jpeg';
  if (starts(bytes, '\u0089PNG\r\n')) return 'image/png';
  if (starts(bytes, 'RIFF') && starts(bytes, 'WEBP', 8)) return 'image/webp';
  return refuse('format', `${String(bytes.byteLength)} bytes of another kind`, 'a JPEG, PNG or WebP photo');
}
