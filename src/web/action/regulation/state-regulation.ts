import { type RegulationAnalysis, analyseRegulation } from '#action';
import { type Reading, type State, quantityOf, states } from '#instrument';
import { type GatheredRegulation, regulationInputOf } from '#workshop';
import { useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import type { ReadingBook } from '../../api/reading-book.ts';
import { useReadingBook } from '../../api/use-readings.ts';

/** The regulation of one state, worked out. */
export interface StateRegulation {
  readonly state: State;
  readonly analysis: RegulationAnalysis;
  readonly gathered: GatheredRegulation;
  /** The readings behind it; what was not measured again stands as found. */
  readonly readings: readonly Reading[];
}

/** The regulation of every state any of it was read in, earlier states first. */
export function useRegulations(): readonly StateRegulation[] {
  const { instrument, cycle, action } = usePiano();
  const book = useReadingBook();
  return useMemo(() => states.filter((state) => hasPart(book, state, 'regulation')).map((state): StateRegulation => {
    const readings = state === 'found' ? [...book.found.values()] : [...book.found.values(), ...book[state].values()];
    const gathered = regulationInputOf({ instrument, readings, cycle, state, terms: action });
    return { state, analysis: analyseRegulation(gathered.input), gathered, readings };
  }), [instrument, cycle, action, book]);
}

/** True when a key was read of this part in a state. */
export function hasPart(book: ReadingBook, state: State, part: 'regulation' | 'hammers'): boolean {
  for (const { quantity, scope } of book[state].values()) if (scope === 'key' && quantityOf(quantity).part === part) return true;
  return false;
}
