import { useSyncExternalStore } from 'react';
import { readKept, writeKept } from '../kept/kept.ts';

const STORAGE_KEY = 'wrestplank.person';
const listeners = new Set<() => void>();
let current = readKept<string | null>(localStorage, STORAGE_KEY, null);

/** Reference of the person at this device; null while nobody is named. The name itself is not kept here. */
export function atTheBench(): string | null {
  return current;
}

/** Says who is at this device from now on. */
export function setAtTheBench(reference: string | null): void {
  current = reference;
  writeKept(localStorage, STORAGE_KEY, reference);
  for (const listener of listeners) listener();
}

export function useAtTheBench(): string | null {
  return useSyncExternalStore((listener) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  }, atTheBench);
}
