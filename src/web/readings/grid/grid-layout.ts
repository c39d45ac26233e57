import type { KeyNumber, Outcome, QuantityName } from '#instrument';
import type { ReactNode } from 'react';
import type { FigureStory } from '../../figure/figure-store.ts';
import type { DerivedName, GridColumn } from './grid-columns.ts';

/** Where the columns that are worked out get their figures. */
export interface GridDerived {
  readonly subscribe: (listener: () => void) => () => void;
  /** What stands for a key; the same object while it stays the same. */
  readonly of: (key: KeyNumber) => Readonly<Partial<Record<DerivedName, number>>>;
  readonly story: (key: KeyNumber, name: DerivedName) => FigureStory | undefined;
  /** From what they are worked out, in words. */
  readonly hint: string;
}

/** What a grid of keys holds: which figures it takes, which it works out, what stands beside it. Give one that keeps its identity. */
export interface GridLayout {
  /** Quantities that may stand in it, in the registry's order, and those that do until others are chosen. */
  readonly quantities: readonly QuantityName[];
  readonly usual: readonly QuantityName[];
  /** Name the choice of columns is kept under on this device. */
  readonly keptAs: string;
  /** How often each thing is measured. */
  readonly repeats: number;
  readonly columnsOf: (chosen: readonly QuantityName[], repeats: number) => readonly GridColumn[];
  readonly derived: GridDerived;
  /** What a cell may end in instead of a number. */
  readonly outcomes: readonly Outcome[];
  /** What stands beside; given a way to lead to a key. */
  readonly aside: (goToKey: (key: KeyNumber) => void) => ReactNode;
}
