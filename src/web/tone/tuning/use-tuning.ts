import { type Reading, type State, states } from '#instrument';
import { type GatheredTuning, type LaidTuning, type TunedState, tunedStatesOf, tuningInputOf, tuningLaidOver } from '#workshop';
import { useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useReadingBook } from '../../api/use-readings.ts';

/** The tuning of a piano, worked out in the browser from what is typed. */
export interface Tuning extends LaidTuning {
  readonly gathered: GatheredTuning;
  readonly read: readonly TunedState[];
  readonly readings: readonly Reading[];
}

/** The curve over the strings of one state, and the pitches and unisons of every state against it. */
export function useTuning(state: State): Tuning {
  const { instrument, cycle, tuning, scale } = usePiano();
  const book = useReadingBook();
  return useMemo(() => {
    const readings = states.flatMap((one) => [...book[one].values()]);
    const gathered = tuningInputOf({ instrument, readings, cycle, state, tuning, scale });
    const laid = tuningLaidOver(gathered);
    return { ...laid, gathered, read: tunedStatesOf(states, { instrument, readings, cycle, targets: laid.targets }), readings };
  }, [instrument, cycle, tuning, scale, book, state]);
}
