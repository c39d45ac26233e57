import { type BellyAnalysis, analyseBelly } from '#belly';
import type { Reading, State } from '#instrument';
import { type GatheredBearing, bearingInputOf } from '#workshop';
import type { Piano } from '../api/piano.tsx';
import type { ReadingBook } from '../api/reading-book.ts';
import { type StateScale, scaleOf } from '../strings/state-scale.ts';

/** The bearing of one state, worked out. */
export interface StateBelly {
  readonly state: State;
  readonly analysis: BellyAnalysis;
  readonly gathered: GatheredBearing;
  /** The readings behind it; of a plan, those as found too. */
  readonly readings: readonly Reading[];
  readonly strings: StateScale;
}

interface Behind {
  readonly book: ReadingBook;
  readonly piano: Pick<Piano, 'instrument' | 'scale'>;
}
const worked = new Map<string, { readonly behind: Behind; readonly belly: StateBelly }>();

/** The bearing of one state, worked out in the browser from what is typed. The same readings and terms give the same object. */
export function bellyOf(piano: Piano, state: State, { book, locale }: { readonly book: ReadingBook; readonly locale: string }): StateBelly {
  const { id, cycle, instrument, scale: terms } = piano;
  const name = `${id} ${String(cycle)} ${state}`;
  const behind: Behind = { book, piano: { instrument, scale: terms } };
  const known = worked.get(name);
  if (known !== undefined && isSame(known.behind, behind, state)) return known.belly;
  const strings = scaleOf(piano, state, { book, locale });
  const planned = state === 'finished' && book.planned.size + book.found.size > 0 ? scaleOf(piano, 'planned', { book, locale }).analysis.notes : [];
  const readings = state === 'planned' ? [...book.found.values(), ...book.planned.values()] : [...book[state].values()];
  const gathered = bearingInputOf({ instrument, readings, cycle, state, terms, strings: strings.analysis.notes, plannedStrings: planned });
  const belly = { state, analysis: analyseBelly(gathered.input), gathered, readings, strings };
  worked.set(name, { behind, belly });
  return belly;
}

/** What was found and planned stands behind the later states; a found one follows from itself alone. */
function isSame(one: Behind, other: Behind, state: State): boolean {
  const states = state === 'found' ? (['found'] as const) : state === 'planned' ? (['found', 'planned'] as const) : (['found', 'planned', 'finished'] as const);
  return one.piano.instrument === other.piano.instrument && one.piano.scale === other.piano.scale && states.every((each) => one.book[each] === other.book[each]);
}
