import { type TouchAnalysis, analyseTouch } from '#action';
import { type Reading, type ScaleTerms, type State, type WeighingSession, quantityOf, states } from '#instrument';
import { analyseScale } from '#strings';
import { scaleInputOf, touchInputOf } from '#workshop';
import type { ProofInput, ProofInstrument, ProvedScale, ProvedState } from './input.ts';

/** What a proof is read from: an instrument with its sessions and standing readings, from a store or from files. */
export interface ProofMaterial extends Pick<ProofInput, 'cycle' | 'intent' | 'head' | 'printedAt' | 'locale' | 'say' | 'title' | 'people'> {
  readonly instrument: ProofInstrument;
  /** `startedAt` is null where no clock saw the weighing. */
  readonly sessions: readonly (Omit<WeighingSession, 'startedAt'> & { readonly startedAt: string | null })[];
  readonly readings: readonly Reading[];
  /** What is stated of the strings; files state nothing. */
  readonly terms?: ScaleTerms | null;
}

/**
 * Works out both states of the touch, as far as there are readings, and hands everything on to `buildProof`.
 * An instrument of unstated kind is worked out as an upright is, which claims less: figures and verdicts, no ratio.
 */
export function proofInputOf(material: ProofMaterial): ProofInput {
  const { readings, cycle, intent } = material;
  const instrument = { ...material.instrument, kind: material.instrument.kind ?? 'upright' } as const;
  const sessions = material.sessions.map((session) => ({ ...session, startedAt: session.startedAt ?? '' }));
  const touchOf = (state: ProvedState): TouchAnalysis | null =>
    readings.some((reading) => reading.cycle === cycle && reading.state === state && quantityOf(reading.quantity).part === 'touch') ? analyseTouch(touchInputOf({ instrument, sessions, readings, cycle, state, intent })) : null;
  return { ...material, found: touchOf('found'), finished: touchOf('finished'), scales: scalesOf(material) };
}

function scalesOf({ instrument: { firstMidi, lastMidi, a4Hz = 440, sections = [] }, readings, cycle, terms = null }: ProofMaterial): readonly ProvedScale[] {
  const isNoted = (state: State): boolean => readings.some((reading) => reading.cycle === cycle && reading.state === state && quantityOf(reading.quantity).part === 'strings');
  return states.filter(isNoted).map((state) => {
    const { input, assumed } = scaleInputOf({ instrument: { firstMidi, lastMidi, a4Hz, sections }, readings, cycle, state, terms });
    return { state, analysis: analyseScale(input), assumed };
  });
}
