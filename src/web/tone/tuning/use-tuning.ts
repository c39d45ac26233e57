import { type KeyNumber, type Reading, type State, states } from '#instrument';
import { runOperation } from '#operation';
import { type Issue } from '#result';
import { tuningCurveOperation } from '#tuning';
import { type GatheredTuning, type HeardPitch, pitchesOf, tuningInputOf, unisonsOf } from '#workshop';
import { useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useReadingBook } from '../../api/use-readings.ts';

/** Where one key is to be. */
export interface Target {
  /** Its place in the answer of the operation. */
  readonly place: number;
  readonly offsetCt: number;
  readonly stretchCt: number;
  readonly frequencyHz: number;
  readonly uncertaintyCt: number | undefined;
}

export interface Octave {
  readonly lowerKey: KeyNumber;
  readonly upperKey: KeyNumber;
  readonly type: '2:1' | '4:2' | '6:3';
}

/** What was read in one state, against the curve. */
export interface ReadState {
  readonly state: State;
  readonly pitches: ReadonlyMap<KeyNumber, HeardPitch>;
  /** Pitch read less the curve; cents. */
  readonly off: ReadonlyMap<KeyNumber, number>;
  readonly unisons: ReadonlyMap<KeyNumber, number>;
}

/** The tuning of a piano, worked out in the browser from what is typed. */
export interface Tuning {
  readonly gathered: GatheredTuning;
  readonly targets: ReadonlyMap<KeyNumber, Target>;
  readonly octaves: readonly Octave[];
  /** Why there is no curve. */
  readonly issues: readonly Issue[];
  readonly read: readonly ReadState[];
  readonly readings: readonly Reading[];
}

/** The curve over the strings of one state, and the pitches and unisons of every state against it. */
export function useTuning(state: State): Tuning {
  const { instrument, cycle, tuning, scale } = usePiano();
  const book = useReadingBook();
  return useMemo(() => {
    const readings = states.flatMap((one) => [...book[one].values()]);
    const gathered = tuningInputOf({ instrument, readings, cycle, state, tuning, scale });
    const result = gathered.input === undefined ? undefined : runOperation(tuningCurveOperation, gathered.input);
    const answer = result?.ok === true ? result.value : undefined;
    const targets = new Map((gathered.input?.keys ?? []).flatMap(({ key }, place) => (answer === undefined ? [] : [[key, {
      place, offsetCt: answer.offsetsCents[place] ?? 0, stretchCt: answer.stretchCents[place] ?? 0, frequencyHz: answer.frequenciesHz[place] ?? 0, uncertaintyCt: answer.uncertaintiesCents?.[place],
    }] as const])));
    const read = states.map((one): ReadState => {
      const pitches = pitchesOf(instrument, readings, cycle, one);
      const off = new Map([...pitches].flatMap(([key, { offsetCt }]) => { const target = targets.get(key); return target === undefined ? [] : [[key, offsetCt - target.offsetCt] as const]; }));
      return { state: one, pitches, off, unisons: unisonsOf(readings, cycle, one) };
    }).filter(({ pitches, unisons }) => pitches.size > 0 || unisons.size > 0);
    return { gathered, targets, octaves: answer?.octaves ?? [], issues: result?.ok === false ? result.issues : [], read, readings };
  }, [instrument, cycle, tuning, scale, book, state]);
}
