import type { KeyNumber } from '#instrument';
import type { DerivedName } from './grid-columns.ts';

/** What is worked out for one key. */
export type DerivedFigures = Readonly<Partial<Record<DerivedName, number>>>;

const NONE: DerivedFigures = {};

/** Hands worked-out figures of notes to a grid: every row hears of a change, and only those whose figures are others take it. */
export class DerivedFeed {
  readonly #listeners = new Set<() => void>();
  #figures: ReadonlyMap<KeyNumber, DerivedFigures> = new Map();

  show(figures: ReadonlyMap<KeyNumber, DerivedFigures>): void {
    const before = this.#figures;
    this.#figures = new Map([...figures].map(([key, now]) => {
      const was = before.get(key);
      return [key, was !== undefined && isSame(was, now) ? was : now];
    }));
    for (const listener of this.#listeners) listener();
  }

  of = (key: KeyNumber): DerivedFigures => this.#figures.get(key) ?? NONE;

  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => {
      this.#listeners.delete(listener);
    };
  };
}

function isSame(one: DerivedFigures, other: DerivedFigures): boolean {
  const names = Object.keys({ ...one, ...other }) as DerivedName[];
  return names.every((name) => one[name] === other[name]);
}
