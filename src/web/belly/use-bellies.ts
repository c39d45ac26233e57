import { type State, quantityOf, states } from '#instrument';
import { useMemo } from 'react';
import { usePiano } from '../api/piano.tsx';
import type { ReadingBook } from '../api/reading-book.ts';
import { useReadingBook } from '../api/use-readings.ts';
import { useLocale } from '../language/use-say.ts';
import { type StateBelly, bellyOf } from './state-belly.ts';

/** The bearing of every state anything was noted of. */
export function useBellies(): readonly StateBelly[] {
  const piano = usePiano();
  const locale = useLocale();
  const book = useReadingBook();
  return useMemo(() => states.filter((state) => hasBearing(book, state)).map((state) => bellyOf(piano, state, { book, locale })), [piano, locale, book]);
}

function hasBearing(book: ReadingBook, state: State): boolean {
  for (const { quantity, scope } of book[state].values()) if (scope === 'key' && quantityOf(quantity).part === 'belly') return true;
  return false;
}
