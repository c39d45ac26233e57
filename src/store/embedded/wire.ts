/** What the engine's thread is told. `bytes` are whole or part messages of the PostgreSQL wire protocol. */
export type ToEngine = { readonly kind: 'bytes'; readonly bytes: Uint8Array } | { readonly kind: 'hangUp' } | { readonly kind: 'stop' };

/** What it answers. `broken` means that the database has stopped and only a new start helps. */
export type FromEngine =
  | { readonly kind: 'ready' }
  | { readonly kind: 'bytes'; readonly bytes: Uint8Array }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'broken'; readonly message: string };

/** What the thread starts with: the folder of the database, and a cell it counts each fsync in. */
export interface EngineStart {
  readonly folder: string;
  readonly syncs: SharedArrayBuffer;
}
