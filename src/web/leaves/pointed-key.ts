import type { KeyNumber } from '#instrument';
import { useSyncExternalStore } from 'react';

const listeners = new Set<() => void>();
let pointed: KeyNumber | undefined;

/** Points at a key, everywhere at once: in every drawn keyboard, every plot, every row. */
export function pointAtKey(key: KeyNumber | undefined): void {
  if (key === pointed) return;
  pointed = key;
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}

/** The key pointed at anywhere on the page. */
export function usePointedKey(): KeyNumber | undefined {
  return useSyncExternalStore(subscribe, () => pointed);
}

/** True for the one key pointed at: renders anew only when that changes. */
export function useIsPointedKey(key: KeyNumber): boolean {
  return useSyncExternalStore(subscribe, () => pointed === key);
}
