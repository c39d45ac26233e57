export { DEMO, SHOP, StoreFailure } from './bench-store.ts';
export type { BenchStore, KeptPhoto, PhotoType, ReadPhoto } from './bench-store.ts';
export type { ByteRange } from './blobs.ts';
export type { ClaimedJob } from './queue.ts';
export type { ReadRecording } from './recordings.ts';
export { openStore } from './open.ts';
export type { StoreOptions } from './open.ts';
