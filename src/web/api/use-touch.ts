import { type TouchAnalysis, analyseTouch } from '#action';
import type { Reading, State } from '#instrument';
import { touchInputOf } from '#workshop';
import { type Piano, usePiano } from './piano.tsx';
import { useReadings } from './use-readings.ts';

interface Worked {
  readonly piano: Pick<Piano, 'sessions' | 'intent' | 'instrument'>;
  readonly analysis: TouchAnalysis;
}
const worked = new WeakMap<ReadonlyMap<string, Reading>, Worked>();

/** The touch of one state, worked out in the browser from what is typed; worked out once, whoever asks, until something of it changes. */
export function useTouch(state: State): TouchAnalysis {
  return touchOf(usePiano(), state, useReadings(state));
}

/** The touch of one state from its readings. The same map, sessions and intent give the same object. */
export function touchOf(piano: Piano, state: State, readings: ReadonlyMap<string, Reading>): TouchAnalysis {
  const { sessions, intent, instrument, cycle } = piano;
  const known = worked.get(readings);
  if (known !== undefined && known.piano.sessions === sessions && known.piano.intent === intent && known.piano.instrument === instrument) return known.analysis;
  const analysis = analyseTouch(touchInputOf({ instrument, sessions, readings: [...readings.values()], cycle, state, intent }));
  worked.set(readings, { piano: { sessions, intent, instrument }, analysis });
  return analysis;
}
