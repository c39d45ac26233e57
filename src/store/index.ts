export { DEMO, SHOP, StoreFailure, photoTypes } from './bench-store.ts';
export type { BenchStore, KeptPhoto, Person, PhotoType, ReadPhoto } from './bench-store.ts';
export { PHOTO_LIMIT_BYTES } from './photos.ts';
export { openStore } from './open.ts';
export type { StoreOptions } from './open.ts';
