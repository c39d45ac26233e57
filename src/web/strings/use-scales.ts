import { quantityOf, states } from '#instrument';
import { useMemo } from 'react';
import { usePiano } from '../api/piano.tsx';
import type { ReadingBook } from '../api/reading-book.ts';
import { useReadingBook } from '../api/use-readings.ts';
import { useLocale } from '../language/use-say.ts';
import { type StateScale, scaleOf } from './state-scale.ts';
import type { Trial } from './trial.ts';

/** The strings of every state anything was noted of, or is tried in. */
export function useScales(trial: Trial): readonly StateScale[] {
  const piano = usePiano();
  const locale = useLocale();
  const book = useReadingBook();
  const isTrying = Object.keys(trial).length > 0;
  return useMemo(
    () => states.filter((state) => hasStrings(book, state) || (state === 'planned' && isTrying)).map((state) => scaleOf(piano, state, { book, locale, ...(state === 'planned' && isTrying ? { trial } : {}) })),
    [piano, locale, book, trial, isTrying],
  );
}

function hasStrings(book: ReadingBook, state: keyof ReadingBook): boolean {
  for (const { quantity } of book[state].values()) if (quantityOf(quantity).part === 'strings') return true;
  return false;
}
