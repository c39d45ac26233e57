import type { LeastWork, RegulationAnalysis, RegulationInput, TouchAnalysis } from '#action';
import type { BellyAnalysis, BellyInput } from '#belly';
import type { Instrument, KeyNumber, Reading, State, TouchIntent, TuningTerms, WeighingSession } from '#instrument';
import type { ScaleAnalysis } from '#strings';
import type { Say } from '#text';
import type { KeyChange } from '#tone';
import type { AirHours, BearingAssumption, CareCard, JudgedSpread, PapersTold, Person, RegulationAssumption, RoomRecord, ScaleAssumption, StandOuts, StateTone, TunedState, TuningAssumption } from '#workshop';

/** What a proof says of the instrument; `null` and an empty name print as not stated. */
export interface ProofInstrument extends Pick<Instrument, 'name' | 'maker' | 'serial' | 'year' | 'lengthMm' | 'firstMidi' | 'lastMidi' | 'demo'> {
  /** Null: causes and remedies, which differ between grand and upright, are not named. */
  readonly kind: Instrument['kind'] | null;
  /** For the strings; left out where there are none. */
  readonly sections?: Instrument['sections'];
  readonly a4Hz?: number;
  /** True when nobody stated the compass: then it is printed as assumed. */
  readonly compassAssumed?: boolean;
}

/** A weighing session without its place in a store: figures from a file have none. */
export type ProofSession = Omit<WeighingSession, 'id' | 'startedAt'> & { readonly startedAt: string | null };

/** The strings of one state, worked out, with what had to be assumed. */
export interface ProvedScale {
  readonly state: State;
  readonly analysis: ScaleAnalysis;
  readonly assumed: readonly ScaleAssumption[];
}

/** The bearing of one state, worked out, with what was asked and what had to be assumed. */
export interface ProvedBelly {
  readonly state: ProvedState;
  readonly analysis: BellyAnalysis;
  readonly asked: BellyInput['asked'];
  readonly assumed: readonly BearingAssumption[];
}

/** The regulation of one state, judged by what was asked. */
export interface ProvedRegulation {
  readonly state: ProvedState;
  readonly analysis: RegulationAnalysis;
  readonly assumed: readonly RegulationAssumption[];
  readonly tolerances: RegulationInput['tolerances'];
  readonly spread?: JudgedSpread | undefined;
}

/** The tuning of the states it was read in, against one curve. */
export interface ProvedTuning {
  readonly curve: ReadonlyMap<KeyNumber, number>;
  readonly states: readonly TunedState<ProvedState>[];
  readonly terms: TuningTerms | null;
  readonly assumed: readonly TuningAssumption[];
  readonly smoothness: number;
}

/** How one state sounds, with what stands out in it. */
export interface ProvedSound extends StateTone {
  readonly state: ProvedState;
  readonly standOuts: StandOuts;
}


/** How an instrument sounds as found and as finished, and what changed as far as that may be said. */
export interface ProvedTone {
  readonly states: readonly ProvedSound[];
  /** Key by key, left out where one state alone was recorded; `moved`: not compared, for the microphone was moved, changed or not told in one of them. */
  readonly changes?: readonly KeyChange[] | 'moved';
}

/** Everything a proof is made of. Clock and language come in from outside; nothing is looked up. */
export interface ProofInput {
  readonly instrument: ProofInstrument;
  /** Which stay in the shop is proved. */
  readonly cycle: number;
  readonly sessions: readonly ProofSession[];
  /** What was to be even; null: nothing is judged, and the proof says so. */
  readonly intent: TouchIntent | null;
  readonly found: TouchAnalysis | null;
  readonly finished: TouchAnalysis | null;
  /** Strings of each state in which any were noted, as found first; left out or empty: the proof has no such part. */
  readonly scales?: readonly ProvedScale[] | undefined;
  /** Bearing of each state in which any was noted, as found first; left out or empty: the proof has no such part. */
  readonly bellies?: readonly ProvedBelly[] | undefined;
  /** Regulation as found and as finished, where any was read; left out or empty: the proof has no such part. */
  readonly regulations?: readonly ProvedRegulation[] | undefined;
  /** Pitch and unisons, where any was read; left out: the proof has no such part. */
  readonly tuning?: ProvedTuning | undefined;
  /** The sound, where any note was heard; left out: the proof has no such part. */
  readonly tone?: ProvedTone | undefined;
  /** Rooms of this stay; left out or empty: the proof has no such part. They are no part of the instrument that is proved. */
  readonly rooms?: readonly RoomRecord[] | undefined;
  /** What papers hang on, held against the rules; left out: the proof has no such part. */
  readonly papers?: PapersTold | undefined;
  /** The air, the plan of care and the moves; left out: the proof has no such part. */
  readonly care?: { readonly cards: readonly CareCard[]; readonly air: AirHours } | undefined;
  /** The plan of least work, where jobs were taken from it; left out: the proof has no such part. */
  readonly leastWork?: LeastWork | undefined;
  /** Standing readings, for the remarks made at the keys, the climate of the bearing and who measured. */
  readonly readings?: readonly Reading[] | undefined;
  /** The people known at the bench, for who measured; figures from files name nobody. */
  readonly people?: readonly Person[] | undefined;
  /** Newest entry of the instrument's log; null for figures that came from files. */
  readonly head: { readonly seq: number; readonly hash: string } | null;
  /** Day of printing, ISO 8601. */
  readonly printedAt: string;
  readonly locale: string;
  readonly say: Say;
  readonly title?: string | undefined;
}

/** The states a proof compares. */
export type ProvedState = Exclude<State, 'planned'>;

/** A state that was measured, with its analysis. */
export interface Proved {
  readonly state: ProvedState;
  readonly touch: TouchAnalysis;
}

/** The states there are figures for, as found first. */
export function provedStates({ found, finished }: Pick<ProofInput, 'found' | 'finished'>): readonly Proved[] {
  return [
    ...(found === null ? [] : [{ state: 'found', touch: found } as const]),
    ...(finished === null ? [] : [{ state: 'finished', touch: finished } as const]),
  ];
}

/** What an instrument may be proved in, in the order it is told. */
export const proofParts = ['touch', 'regulation', 'strings', 'bearing', 'tuning', 'tone', 'papers'] as const;
export type ProofPart = (typeof proofParts)[number];

type Told = Pick<ProofInput, 'found' | 'finished' | 'scales' | 'bellies' | 'regulations' | 'tuning' | 'tone' | 'papers'>;

/** The parts of a proof there is something to say of. */
export function provedParts(input: Told): Readonly<Record<ProofPart, boolean>> {
  const { scales = [], bellies = [], regulations = [], tuning, tone, papers } = input;
  return { touch: provedStates(input).length > 0, regulation: regulations.length > 0, strings: scales.length > 0, bearing: bellies.length > 0, tuning: tuning !== undefined, tone: tone !== undefined, papers: papers !== undefined };
}

/** The parts told where no key was weighed; empty where keys were, or where nothing was noted at all. */
export function otherPartsOf(input: Told): readonly ProofPart[] {
  const parts = provedParts(input);
  return parts.touch ? [] : proofParts.filter((part) => parts[part]);
}

/** The states, as found and as finished, in which anything was noted that the proof tells of. */
export function statesTold({ found, finished, scales = [], bellies = [], regulations = [], tuning, tone }: Told): readonly ProvedState[] {
  const of = { found, finished } as const;
  const others = [...scales, ...bellies, ...regulations, ...(tuning?.states ?? []), ...(tone?.states ?? [])];
  return (['found', 'finished'] as const).filter((state) => of[state] !== null || others.some((one) => one.state === state));
}
