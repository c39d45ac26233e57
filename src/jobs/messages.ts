import type { Issue } from '#result';
import type { AnalysisTask } from '#workshop';

/** What a thread is given: a task and the bytes of the sound, which are its own from then on. */
export interface ToThread {
  readonly task: AnalysisTask;
  readonly bytes: Uint8Array;
}

/** What a thread says: how far it has come (0 to 1), what it came to, or what is wrong with the sound. */
export type FromThread =
  | { readonly kind: 'progress'; readonly progress: number }
  | { readonly kind: 'answer'; readonly answer: unknown }
  | { readonly kind: 'refused'; readonly issues: readonly Issue[] };
