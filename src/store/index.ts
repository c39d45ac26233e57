export { DEMO, SHOP, StoreFailure } from './bench-store.ts';
export type { BenchStore } from './bench-store.ts';
