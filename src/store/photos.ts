import { PHOTO_LIMIT_BYTES } from '#instrument';
import { type KeptPhoto, type PhotoType, type ReadPhoto, StoreFailure } from './bench-store.ts';
import type { Blobs } from './blobs.ts';

/** Keeps a photo; on the disk when it answers. @throws StoreFailure `refused` for what is no photo or too large. */
export function keepPhoto(photos: Blobs, bytes: Uint8Array): KeptPhoto {
  const type = checkedType(bytes);
  return { ...photos.keep(bytes), type };
}

/** The bytes of a photo and their type. @throws StoreFailure `notFound`. */
export function readPhoto(photos: Blobs, hash: string): ReadPhoto {
  const bytes = photos.read(hash);
  return { bytes, type: checkedType(bytes) };
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
