import { fsyncSync } from 'node:fs';
import { NodeFS } from '@electric-sql/pglite/nodefs';

type Init = InstanceType<typeof NodeFS>['init'];

/** The part of the engine's file layer that is reached into: it has no `fsync` of its own, so nothing would ever reach the disk. */
interface FileLayer {
  readonly NODEFS: { readonly stream_ops: { fsync?: (stream: { readonly nfd: number }) => number } };
  readonly FS: { readonly ErrnoError: new (code: number) => Error };
}

/** The engine's number for a failed input or output; on it the database aborts rather than believe in a write. */
const EIO = 29;

/** What the engine's thread wants to hear of its files. */
export interface Watch {
  /** Something was brought to the disk. */
  synced(): void;
  /** The database gave up, and cannot be asked again: a full or broken disk, most likely. */
  aborted(): never;
}

/**
 * Database files on the real disk whose `fsync` is a real one, for directories too.
 * It rests on the inside of the engine, so a test counts what happens at each commit.
 */
export class DurableFiles extends NodeFS {
  readonly #watch: Watch;

  constructor(folder: string, watch: Watch) {
    super(folder);
    this.#watch = watch;
  }

  override async init(...[engine, options]: Parameters<Init>): ReturnType<Init> {
    const { emscriptenOpts } = await super.init(engine, options);
    const syncForReal = (module: unknown): void => {
      const layer = module as FileLayer;
      layer.NODEFS.stream_ops.fsync = ({ nfd }) => {
        try {
          fsyncSync(nfd);
        } catch {
          throw new layer.FS.ErrnoError(EIO);
        }
        this.#watch.synced();
        return 0;
      };
    };
    return { emscriptenOpts: { ...emscriptenOpts, preRun: [...(emscriptenOpts.preRun ?? []), syncForReal], onAbort: () => this.#watch.aborted() } };
  }
}
