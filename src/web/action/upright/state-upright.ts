import { type AnalysedUpright, analyseUpright } from '#action';
import { type Reading, type State, states } from '#instrument';
import { type GatheredUpright, uprightInputOf } from '#workshop';
import { useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useReadingBook } from '../../api/use-readings.ts';

/** Spring, damper and touch of an upright in one state, worked out. */
export interface StateUpright {
  readonly state: State;
  readonly keys: readonly AnalysedUpright[];
  readonly gathered: GatheredUpright;
  /** The readings behind it; arms that were not measured again stand as found. */
  readonly readings: readonly Reading[];
}

/** Every state a spring or a damper was read in, earlier states first. */
export function useUprights(): readonly StateUpright[] {
  const { instrument, cycle, action, intent } = usePiano();
  const book = useReadingBook();
  return useMemo(() => states.filter((state) => [...book[state].values()].some(({ quantity }) => quantity === 'springTorqueGMm' || quantity === 'damperG')).map((state): StateUpright => {
    const readings = state === 'found' ? [...book.found.values()] : [...book.found.values(), ...book[state].values()];
    const gathered = uprightInputOf({ instrument, readings, cycle, state, terms: action, intent });
    return { state, keys: analyseUpright(gathered.input), gathered, readings };
  }), [instrument, cycle, action, intent, book]);
}
