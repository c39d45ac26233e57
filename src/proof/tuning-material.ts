import { type Reading, type ScaleTerms, type TuningTerms, quantityOf } from '#instrument';
import { runOperation } from '#operation';
import { USUAL_SMOOTHNESS, tuningCurveOperation } from '#tuning';
import { pitchesOf, tuningInputOf, unisonsOf } from '#workshop';
import type { ProofInstrument, ProvedTuning } from './input.ts';

/** What the tuning of a proof is read from. */
interface TuningMaterial {
  readonly instrument: ProofInstrument;
  readonly readings: readonly Reading[];
  readonly cycle: number;
  readonly terms?: ScaleTerms | null;
  readonly tuningTerms?: TuningTerms | null;
}

/** Pitch and unisons as found and as finished against one curve, that of the strings as finished where any pitch was read then; nothing where none was read. */
export function tuningOfMaterial({ instrument: { firstMidi, lastMidi, a4Hz = 440, sections = [] }, readings, cycle, terms: scale = null, tuningTerms: tuning = null }: TuningMaterial): ProvedTuning | undefined {
  const instrument = { firstMidi, lastMidi, a4Hz, sections };
  const noted = (['found', 'finished'] as const).filter((state) => readings.some((one) => one.cycle === cycle && one.state === state && one.value !== null && quantityOf(one.quantity).part === 'tuning'));
  const last = noted.at(-1);
  if (last === undefined) return undefined;
  const gathered = tuningInputOf({ instrument, readings, cycle, state: last, tuning, scale });
  const result = gathered.input === undefined ? undefined : runOperation(tuningCurveOperation, gathered.input);
  const offsets = result?.ok === true ? result.value.offsetsCents : [];
  const curve = new Map((gathered.input?.keys ?? []).flatMap(({ key }, place) => { const offset = offsets[place]; return offset === undefined ? [] : [[key, offset] as const]; }));
  const states = noted.map((state) => {
    const pitches = new Map([...pitchesOf(instrument, readings, cycle, state)].map(([key, { offsetCt }]) => [key, offsetCt] as const));
    const off = new Map([...pitches].flatMap(([key, offset]) => { const target = curve.get(key); return target === undefined ? [] : [[key, offset - target] as const]; }));
    return { state, pitches, off, unisons: unisonsOf(readings, cycle, state) };
  }).filter(({ pitches, unisons }) => pitches.size > 0 || unisons.size > 0);
  return states.length === 0 ? undefined : { curve, states, terms: tuning, assumed: gathered.assumed, smoothness: tuning?.smoothness ?? USUAL_SMOOTHNESS };
}
