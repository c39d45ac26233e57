import type { Reading } from '#instrument';
import { useSyncExternalStore } from 'react';

/** How one figure came about: the operation, what went in and where that came from. */
export interface FigureStory {
  /** What the figure is, in the reader's words: `Balance weight, C4`. */
  readonly title: string;
  /** Name of the operation, as `wrestplank calc` knows it. */
  readonly operation: string;
  /** Exactly what the operation is given; absent fields left out. */
  readonly input: Readonly<Record<string, unknown>>;
  /** The field of the answer that is the figure. */
  readonly output?: string;
  /** The readings behind fields of the input, by field name; several where repeats were averaged. */
  readonly readings?: Readonly<Record<string, readonly Reading[]>>;
}

const listeners = new Set<() => void>();
let open: FigureStory | undefined;

/** Opens the panel on a figure, or closes it. */
export function openFigure(story: FigureStory | undefined): void {
  open = story;
  for (const listener of listeners) listener();
}

export function useOpenFigure(): FigureStory | undefined {
  return useSyncExternalStore((listener) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  }, () => open);
}
