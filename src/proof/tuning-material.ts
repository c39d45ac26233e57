import { type Reading, type ScaleTerms, type TuningTerms, quantityOf } from '#instrument';
import { USUAL_SMOOTHNESS } from '#tuning';
import { tunedStatesOf, tuningInputOf, tuningLaidOver } from '#workshop';
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
  const { targets } = tuningLaidOver(gathered);
  const states = tunedStatesOf(noted, { instrument, readings, cycle, targets });
  return states.length === 0 ? undefined : { curve: new Map([...targets].map(([key, { offsetCt }]) => [key, offsetCt])), states, terms: tuning, assumed: gathered.assumed, smoothness: tuning?.smoothness ?? USUAL_SMOOTHNESS };
}
