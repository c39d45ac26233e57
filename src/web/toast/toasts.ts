import { useSyncExternalStore } from 'react';

/** A short word on what has just happened. Those that ask for something stay until closed. */
export interface Toast {
  readonly id: number;
  readonly text: string;
  readonly tone: 'plain' | 'bad';
  readonly action?: { readonly label: string; readonly perform: () => void };
}

const SHOWN_MS = 9000;
const listeners = new Set<() => void>();
let toasts: readonly Toast[] = [];
let lastId = 0;

function change(next: readonly Toast[]): void {
  toasts = next;
  for (const listener of listeners) listener();
}

/** Shows a toast; one that says what went wrong stays until it is closed. */
export function toast(text: string, options: Partial<Pick<Toast, 'tone' | 'action'>> = {}): void {
  const made: Toast = { id: (lastId += 1), text, tone: options.tone ?? 'plain', ...(options.action === undefined ? {} : { action: options.action }) };
  change([...toasts.slice(-2), made]);
  if (made.tone === 'plain') setTimeout(() => { closeToast(made.id); }, SHOWN_MS);
}

export function closeToast(id: number): void {
  change(toasts.filter((shown) => shown.id !== id));
}

export function useToasts(): readonly Toast[] {
  return useSyncExternalStore((listener) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  }, () => toasts);
}
