export { DEMO, SHOP, StoreFailure } from './bench-store.ts';
export type { BenchStore, ByteRange, ClaimedJob, KeptPhoto, PhotoType, ReadPhoto, ReadRecording } from './bench-store.ts';
export { openStore } from './open.ts';
export type { StoreOptions } from './open.ts';
