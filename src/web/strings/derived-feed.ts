import type { KeyNumber } from '#instrument';
import type { NoteFigures, ScaleAnalysis } from '#strings';

const NONE = {};

/** Hands the figures of notes to a grid: a row hears of a change, and takes it when its own figures are others. */
export class DerivedFeed {
  readonly #listeners = new Set<() => void>();
  #figures: ReadonlyMap<KeyNumber, NoteFigures | undefined> = new Map();

  show(analysis: ScaleAnalysis | undefined): void {
    this.#figures = new Map(analysis?.notes.map(({ key, figures }) => [key, figures]));
    for (const listener of this.#listeners) listener();
  }

  of = (key: KeyNumber): Partial<NoteFigures> => this.#figures.get(key) ?? NONE;

  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => {
      this.#listeners.delete(listener);
    };
  };
}
