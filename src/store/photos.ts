import { PHOTO_LIMIT_BYTES } from '#instrument';
import type { Issue } from '#result';
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

/** Says of each photo that a card names and nobody kept where it stands. */
export function unkeptPhotos({ photos }: { readonly photos: Pick<Blobs, 'has'> }, named: readonly { readonly hash: string }[], path = 'photos'): readonly Issue[] {
  return named.flatMap(({ hash }, index): readonly Issue[] => (photos.has(hash) ? [] : [{ code: 'unknown', path: `${path}[${String(index)}].hash`, given: hash, allowed: 'the hash of a photo kept before' }]));
}

/** The same of the condition before and after. */
export function unkeptSides(bench: { readonly photos: Pick<Blobs, 'has'> }, sides: Readonly<Record<'before' | 'after', { readonly photos: readonly { readonly hash: string }[] } | null>>): readonly Issue[] {
  return (['before', 'after'] as const).flatMap((side) => unkeptPhotos(bench, sides[side]?.photos ?? [], `${side}.photos`));
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
