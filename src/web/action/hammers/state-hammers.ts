import { type HammerAnalysis, analyseHammers } from '#action';
import { type Reading, type State, states } from '#instrument';
import { type GatheredHammers, hammerInputOf } from '#workshop';
import { useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useReadingBook } from '../../api/use-readings.ts';
import { useLocale } from '../../language/use-say.ts';
import { scaleOf } from '../../strings/state-scale.ts';
import { hasPart } from '../regulation/state-regulation.ts';

/** The hammers of one state, worked out. */
export interface StateHammers {
  readonly state: State;
  readonly analysis: HammerAnalysis;
  readonly gathered: GatheredHammers;
  /** The readings behind them; heights and arms that were not measured again stand as found. */
  readonly readings: readonly Reading[];
}

/** The hammers of every state any of them was read in, with the speaking lengths of the strings of that state. */
export function useHammers(): readonly StateHammers[] {
  const piano = usePiano();
  const locale = useLocale();
  const book = useReadingBook();
  return useMemo(() => states.filter((state) => hasPart(book, state, 'hammers')).map((state): StateHammers => {
    const { instrument, cycle, action } = piano;
    const readings = state === 'found' ? [...book.found.values()] : [...book.found.values(), ...book[state].values()];
    const own = scaleOf(piano, state, { book, locale }).analysis.notes;
    const found = scaleOf(piano, 'found', { book, locale }).analysis.notes;
    const strings = own.map((note, index) => (note.speakingLengthMm !== undefined || state === 'found' ? note : { key: note.key, speakingLengthMm: found[index]?.speakingLengthMm, isFromFound: true }));
    const gathered = hammerInputOf({ instrument, readings, cycle, state, terms: action, strings });
    return { state, analysis: analyseHammers(gathered.input), gathered, readings };
  }), [piano, book, locale]);
}
