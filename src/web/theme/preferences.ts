import { type Language, languageOf } from '#text';
import { useSyncExternalStore } from 'react';

/** What this device shows and how; never what is stored of a piano. */
export interface Preferences {
  readonly language: Language;
  readonly theme: 'system' | 'light' | 'dark';
  readonly contrast: 'system' | 'usual' | 'more';
}

const STORAGE_KEY = 'wrestplank.preferences';
const listeners = new Set<() => void>();
let current: Preferences = read();

function read(): Preferences {
  const usual: Preferences = { language: languageOf(navigator.language), theme: 'system', contrast: 'system' };
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(STORAGE_KEY) ?? '{}');
    return typeof kept === 'object' && kept !== null ? { ...usual, ...kept } : usual;
  } catch {
    return usual;
  }
}

/** Writes the preferences on the root element, where the tokens read them. */
function apply({ language, theme, contrast }: Preferences): void {
  const root = document.documentElement;
  root.lang = language;
  if (theme === 'system') delete root.dataset['theme'];
  else root.dataset['theme'] = theme;
  if (contrast === 'system') delete root.dataset['contrast'];
  else root.dataset['contrast'] = contrast;
}

apply(current);

export function preferences(): Preferences {
  return current;
}

export function setPreferences(change: Partial<Preferences>): void {
  current = { ...current, ...change };
  apply(current);
  try {
    localStorage.setItem(STORAGE_KEY, JSON.stringify(current));
  } catch {
    // A device that keeps nothing still shows what was chosen until the page is closed.
  }
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => { listeners.delete(listener); };
}

export function usePreferences(): Preferences {
  return useSyncExternalStore(subscribe, preferences);
}
