import type { MessageKey } from '#text';
import { useEffect, useSyncExternalStore } from 'react';

/** One thing the program can be told to do: behind the menu, the shortcut and the palette alike. */
export interface Command {
  /** Unique: the last one registered under an id is the one that counts. */
  readonly id: string;
  readonly label: MessageKey;
  /** Words for values in the label. */
  readonly values?: Readonly<Record<string, string | number>>;
  readonly group: MessageKey;
  /** `mod+k`, `shift+?`, `g p`: mod is Ctrl, or Command on a Mac; two keys with a space are struck one after the other. */
  readonly shortcut?: string;
  readonly perform: () => void;
  /** Left out of menus and deaf to its shortcut while false. */
  readonly when?: () => boolean;
}

const registered = new Map<string, Command>();
const listeners = new Set<() => void>();
let snapshot: readonly Command[] = [];

function changed(): void {
  snapshot = [...registered.values()];
  for (const listener of listeners) listener();
}

/** Registers commands; answers how to take them back. */
export function registerCommands(commands: readonly Command[]): () => void {
  for (const command of commands) registered.set(command.id, command);
  changed();
  return () => {
    for (const command of commands) if (registered.get(command.id) === command) registered.delete(command.id);
    changed();
  };
}

/** Registers commands while the component stands. Pass a list that keeps its identity between renders. */
export function useCommands(commands: readonly Command[]): void {
  useEffect(() => registerCommands(commands), [commands]);
}

export function allCommands(): readonly Command[] {
  return snapshot;
}

export function isAvailable(command: Command): boolean {
  return command.when?.() ?? true;
}

export function useAllCommands(): readonly Command[] {
  return useSyncExternalStore((listener) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  }, allCommands);
}
