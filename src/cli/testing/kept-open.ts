import type * as Store from '#store';
import type { BenchStore } from '#store';

let opened: BenchStore | undefined;

/** Commands of this test file use the store given, which stays open after each of them; none, and each opens its own again. */
export function keepOpen(store: BenchStore | undefined): void {
  opened = store;
}

/** The store, which opens as always until one is kept open. */
export function withKeptOpen(real: typeof Store): typeof Store {
  const keptOpen = (store: BenchStore): BenchStore => new Proxy(store, { get: (target, name): unknown => (name === 'close' ? () => Promise.resolve() : Reflect.get(target, name)) });
  return { ...real, openStore: async (options) => (opened === undefined ? real.openStore(options) : keptOpen(opened)) };
}
