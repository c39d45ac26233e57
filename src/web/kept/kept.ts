import { useCallback, useState } from 'react';

/** Reads a value kept by the browser; the usual one where nothing readable stands. */
export function readKept<T>(storage: Storage, key: string, usual: T): T {
  try {
    const text = storage.getItem(key);
    return text === null ? usual : (JSON.parse(text) as T);
  } catch {
    return usual;
  }
}

/** Keeps a value in the browser; without storage it lasts as long as the page. */
export function writeKept(storage: Storage, key: string, value: unknown): void {
  try {
    storage.setItem(key, JSON.stringify(value));
  } catch {
    // What a device will not keep is shown until the page is closed.
  }
}

/** State that outlives a reload of the window. */
export function useKept<T>(key: string, usual: T): readonly [T, (value: T) => void] {
  const [kept, setKept] = useState<{ readonly key: string; readonly value: T }>(() => ({ key, value: readKept(sessionStorage, key, usual) }));
  const value = kept.key === key ? kept.value : readKept(sessionStorage, key, usual);
  const keep = useCallback(
    (next: T): void => {
      writeKept(sessionStorage, key, next);
      setKept({ key, value: next });
    },
    [key],
  );
  return [value, keep];
}
