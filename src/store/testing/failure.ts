import { StoreFailure } from '../bench-store.ts';

/** What a promise was refused with. @throws Error when it was not refused, or with something else. */
export async function failureOf(promise: Promise<unknown>): Promise<StoreFailure> {
  const outcome = await promise.then((value) => ({ value }), (error: unknown) => ({ error }));
  if ('error' in outcome && outcome.error instanceof StoreFailure) return outcome.error;
  throw 'error' in outcome ? outcome.error : new Error(`not refused, but answered ${JSON.stringify(outcome.value)}`);
}
