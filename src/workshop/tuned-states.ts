import type { KeyNumber, Reading, State } from '#instrument';
import { runOperation } from '#operation';
import type { Issue } from '#result';
import { tuningCurveOperation } from '#tuning';
import { type GatheredTuning, type HeardPitch, type TuningMaterial, pitchesOf, unisonsOf } from './tuning-input.ts';

/** Where one key is to be. */
export interface TuningTarget {
  /** Its place in the answer of the operation `tuning-curve`. */
  readonly place: number;
  readonly offsetCt: number;
  readonly stretchCt: number;
  readonly frequencyHz: number;
  readonly uncertaintyCt: number | undefined;
}

/** An octave the curve was laid by. */
export interface TunedOctave {
  readonly lowerKey: KeyNumber;
  readonly upperKey: KeyNumber;
  readonly type: '2:1' | '4:2' | '6:3';
}

/** The curve over the strings gathered; why there is none stands in the issues. */
export interface LaidTuning {
  readonly targets: ReadonlyMap<KeyNumber, TuningTarget>;
  readonly octaves: readonly TunedOctave[];
  readonly issues: readonly Issue[];
}

/** Lays the curve over the strings gathered: where every key is to be, and the octaves it was laid by. */
export function tuningLaidOver({ input }: GatheredTuning): LaidTuning {
  const result = input === undefined ? undefined : runOperation(tuningCurveOperation, input);
  if (result?.ok !== true) return { targets: new Map(), octaves: [], issues: result?.issues ?? [] };
  const { offsetsCents, stretchCents, frequenciesHz, uncertaintiesCents, octaves } = result.value;
  const targets = new Map((input?.keys ?? []).map(({ key }, place) => [key, {
    place, offsetCt: offsetsCents[place] ?? 0, stretchCt: stretchCents[place] ?? 0, frequencyHz: frequenciesHz[place] ?? 0, uncertaintyCt: uncertaintiesCents?.[place],
  }] as const));
  return { targets, octaves, issues: [] };
}

/** What was read of pitch and unisons in one state, against the curve; cents. */
export interface TunedState<S extends State = State> {
  readonly state: S;
  /** Off equal temperament. */
  readonly pitches: ReadonlyMap<KeyNumber, HeardPitch>;
  /** Off the curve. */
  readonly off: ReadonlyMap<KeyNumber, number>;
  readonly unisons: ReadonlyMap<KeyNumber, number>;
}

/** Pitch and unisons of each state against one curve; a state in which neither was read is left out. */
export function tunedStatesOf<S extends State>(states: readonly S[], { instrument, readings, cycle, targets }: Pick<TuningMaterial, 'instrument' | 'cycle'> & { readonly readings: readonly Reading[]; readonly targets: LaidTuning['targets'] }): readonly TunedState<S>[] {
  return states.map((state): TunedState<S> => {
    const pitches = pitchesOf(instrument, readings, cycle, state);
    const off = new Map([...pitches].flatMap(([key, { offsetCt }]) => { const target = targets.get(key); return target === undefined ? [] : [[key, offsetCt - target.offsetCt] as const]; }));
    return { state, pitches, off, unisons: unisonsOf(readings, cycle, state) };
  }).filter(({ pitches, unisons }) => pitches.size > 0 || unisons.size > 0);
}
