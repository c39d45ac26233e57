import { useCallback, useState } from 'react';
import { readKept, writeKept } from './kept.ts';

const PREFIX = 'wrestplank.draft.';

/** What of a form was typed and is not yet saved: the fields that differ from what the form opened with. */
export function changedFields<T extends object>(base: T, typed: T): Partial<T> {
  const names = Object.keys(typed) as (keyof T)[];
  return Object.fromEntries(names.filter((name) => JSON.stringify(typed[name]) !== JSON.stringify(base[name])).map((name) => [name, typed[name]])) as Partial<T>;
}

/** A form as it was left: what was typed, over what stands now in the fields nobody touched. Fields the form no longer has are left out. */
export function draftOver<T extends object>(base: T, kept: Partial<T>): T {
  const known = Object.entries(kept).filter(([name, value]) => Object.hasOwn(base, name) && (base[name as keyof T] === null || typeof value === typeof base[name as keyof T]));
  return { ...base, ...(Object.fromEntries(known) as Partial<T>) };
}

/** A half-filled form that outlives a reload and a change of page. */
export interface Draft<T> {
  readonly typed: T;
  readonly change: (turn: (typed: T) => T) => void;
  /** Forgets it: on save, and on cancel. */
  readonly drop: () => void;
  /** True when it was left half-filled before the form opened this time. */
  readonly isTakenUp: boolean;
}

interface Open<T> {
  readonly name: string;
  readonly base: T;
  readonly typed: T;
  readonly isTakenUp: boolean;
}

/**
 * Keeps what is typed into a form on this device at each stroke, under a name of its own.
 * `base` is read when the form opens and when its name changes; only what differs from it is kept.
 */
export function useDraft<T extends object>(name: string, base: () => T): Draft<T> {
  const [open, setOpen] = useState(() => openDraft(name, base));
  const here = open.name === name ? open : openDraft(name, base);
  if (here !== open) setOpen(here);
  const change = useCallback((turn: (typed: T) => T): void => {
    setOpen((now) => {
      const typed = turn(now.typed);
      keepDraft(now.name, now.base, typed);
      return { ...now, typed };
    });
  }, []);
  const drop = useCallback((): void => { forgetDraft(name); }, [name]);
  return { typed: here.typed, change, drop, isTakenUp: here.isTakenUp };
}

function openDraft<T extends object>(name: string, base: () => T): Open<T> {
  const fresh = base();
  const typed = draftOver(fresh, readKept<Partial<T>>(localStorage, PREFIX + name, {}));
  return { name, base: fresh, typed, isTakenUp: Object.keys(changedFields(fresh, typed)).length > 0 };
}

function keepDraft<T extends object>(name: string, base: T, typed: T): void {
  const changed = changedFields(base, typed);
  if (Object.keys(changed).length === 0) forgetDraft(name);
  else writeKept(localStorage, PREFIX + name, changed);
}

function forgetDraft(name: string): void {
  try {
    localStorage.removeItem(PREFIX + name);
  } catch {
    // Without storage nothing was kept.
  }
}
