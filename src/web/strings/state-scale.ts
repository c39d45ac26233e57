import type { Instrument, Reading, ScaleTerms, State } from '#instrument';
import { type ScaleAnalysis, analyseScale } from '#strings';
import { type ScaleAssumption, scaleInputOf } from '#workshop';
import type { Piano } from '../api/piano.tsx';
import type { ReadingBook } from '../api/reading-book.ts';
import { type Trial, triedReadings } from './trial.ts';

/** The strings of one state, worked out; `isTrial` while sizes are tried in it that are not kept. */
export interface StateScale {
  readonly state: State;
  readonly isTrial: boolean;
  readonly analysis: ScaleAnalysis;
  readonly assumed: readonly ScaleAssumption[];
  /** The readings behind it, tried ones included. */
  readonly readings: readonly Reading[];
}

interface Behind {
  readonly own: ReadingBook[State];
  readonly found: ReadingBook[State];
  readonly instrument: Instrument;
  readonly terms: ScaleTerms | null;
  readonly trial: Trial | undefined;
  readonly locale: string;
}

interface Kept {
  readonly behind: Behind;
  readonly scale: StateScale;
}
const worked = new Map<string, Kept>();

/**
 * The strings of one state, worked out in the browser from what is typed. The same readings, terms and trial give the same object; a
 * change works out anew only the notes it touches.
 */
export function scaleOf(piano: Piano, state: State, { book, trial, locale }: { readonly book: ReadingBook; readonly trial?: Trial; readonly locale: string }): StateScale {
  const { id, cycle, instrument, scale: terms } = piano;
  const name = `${id} ${String(cycle)} ${state}`;
  const behind: Behind = { own: book[state], found: book.found, instrument, terms, trial, locale };
  const known = worked.get(name);
  if (known !== undefined && sameBehind(known.behind, behind, state)) return known.scale;
  const isTrial = trial !== undefined && Object.keys(trial).length > 0;
  const own = isTrial ? triedReadings(book[state].values(), trial, { cycle, locale }) : [...book[state].values()];
  const readings = state === 'planned' ? [...book.found.values(), ...own] : own;
  const { input, assumed } = scaleInputOf({ instrument, readings, cycle, state, terms });
  const scale = { state, isTrial, analysis: analyseScale(input, known?.scale.analysis), assumed, readings };
  worked.set(name, { behind, scale });
  return scale;
}

/** What was found matters to a plan only: it stands there where the plan says nothing. */
function sameBehind(one: Behind, other: Behind, state: State): boolean {
  return one.own === other.own && one.instrument === other.instrument && one.terms === other.terms && one.trial === other.trial && one.locale === other.locale
    && (state !== 'planned' || one.found === other.found);
}
