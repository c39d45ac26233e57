import { PHOTO_LIMIT_BYTES } from '#instrument';
import { mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import { afterAll, describe, expect, it } from 'vitest';
import { StoreFailure } from './bench-store.ts';
import { blobsIn, noBlobs } from './blobs.ts';
import { keepPhoto, readPhoto } from './photos.ts';

const folder = mkdtempSync(join(tmpdir(), 'wrestplank-photos-'));
afterAll(() => { rmSync(folder, { recursive: true, force: true }); });
const png = (salt: string) => Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), deflateSync(salt)]);
const failure = (work: () => unknown): StoreFailure => {
  try {
    work();
  } catch (error) {
    if (error instanceof StoreFailure) return error;
  }
  throw new Error('was not refused');
};

describe('photos', () => {
  const photos = blobsIn(join(folder, 'photos'), 'photo');

  it('are found again by the hash of their bytes, once however often they come', () => {
    const bytes = png('board');
    const kept = keepPhoto(photos, bytes);
    expect(keepPhoto(photos, bytes)).toEqual(kept);
    expect(kept).toMatchObject({ type: 'image/png', byteCount: bytes.byteLength });
    expect(Buffer.from(readPhoto(photos, kept.hash).bytes)).toEqual(bytes);
    const files = readdirSync(join(folder, 'photos', kept.hash.slice(0, 2)));
    expect(files).toEqual([kept.hash]);
    expect(statSync(join(folder, 'photos', kept.hash.slice(0, 2), kept.hash)).size).toBe(bytes.byteLength);
  });

  it('refuses what is no photo, what is too large, and a hash that leads elsewhere', () => {
    expect(failure(() => keepPhoto(photos, Buffer.from('<svg onload=alert(1)>')))).toMatchObject({ reason: 'refused', issues: [{ code: 'format', path: 'photo' }] });
    expect(failure(() => keepPhoto(photos, Buffer.alloc(0)))).toMatchObject({ issues: [{ code: 'format' }] });
    expect(failure(() => keepPhoto(photos, Buffer.concat([png('x'), Buffer.alloc(PHOTO_LIMIT_BYTES)])))).toMatchObject({ issues: [{ code: 'length' }] });
    for (const hash of ['../../etc/passwd', '', 'a'.repeat(64)]) expect(failure(() => readPhoto(photos, hash)).reason).toBe('notFound');
  });

  it('says so where no folder is named', () => {
    const none = noBlobs('photo', 'photos');
    expect(failure(() => keepPhoto(none, png('y'))).reason).toBe('unavailable');
    expect(none.has('a'.repeat(64))).toBe(false);
  });
});
