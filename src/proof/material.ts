import { type LeastWork, type TouchAnalysis, analyseRegulation, analyseTouch, leastWork } from '#action';
import { analyseBelly } from '#belly';
import { type ActionTerms, type Instrument, type Reading, type ScaleTerms, type State, type TuningTerms, type WeighingSession, quantityOf, states } from '#instrument';
import { analyseScale } from '#strings';
import { LEAST_WORK, type RoomRecord, type WorkItem, type WorkedSound, bearingInputOf, leastWorkInputOf, regulationInputOf, scaleInputOf, touchInputOf } from '#workshop';
import type { ProofInput, ProofInstrument, ProvedBelly, ProvedRegulation, ProvedScale, ProvedState } from './input.ts';
import { toneOfMaterial } from './tone-material.ts';
import { tuningOfMaterial } from './tuning-material.ts';

/** What a proof is read from: an instrument with its sessions and standing readings, from a store or from files. */
export interface ProofMaterial extends Pick<ProofInput, 'cycle' | 'intent' | 'head' | 'printedAt' | 'locale' | 'say' | 'title' | 'people' | 'papers' | 'care'> {
  readonly instrument: ProofInstrument;
  /** `startedAt` is null where no clock saw the weighing. */
  readonly sessions: readonly (Omit<WeighingSession, 'startedAt'> & { readonly startedAt: string | null })[];
  readonly readings: readonly Reading[];
  /** What is stated of the strings; files state nothing. */
  readonly terms?: ScaleTerms | null;
  /** What is stated and asked of the action; files state nothing. */
  readonly action?: ActionTerms | null;
  /** What is stated and asked of the tuning; files state nothing. */
  readonly tuningTerms?: TuningTerms | null;
  /** Recordings with what was worked out of them; files have none. */
  readonly sounds?: readonly WorkedSound[];
  /** Rooms it stands in or may stand in; files have none. */
  readonly rooms?: readonly RoomRecord[];
  /** Jobs on the list of work; files have none. */
  readonly work?: readonly WorkItem[];
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
  const found = touchOf('found');
  const scaleAt = scalesOnce(material);
  return { ...material, found, finished: touchOf('finished'), leastWork: leastWorkOf(material, instrument, found), scales: scalesOf(material, scaleAt), bellies: belliesOf(material, scaleAt), regulations: regulationsOf(material, instrument.kind), tuning: tuningOfMaterial(material), tone: toneOfMaterial(material.sounds ?? [], cycle) };
}

/** The plan of least work by what is stated now, where a job of this stay was taken from such a plan. */
function leastWorkOf({ work = [], readings, cycle, intent, action: terms = null }: ProofMaterial, instrument: Pick<Instrument, 'kind' | 'firstMidi' | 'lastMidi'>, touch: TouchAnalysis | null): LeastWork | undefined {
  if (touch === null || intent === null || !work.some((item) => item.cycle === cycle && item.cause === LEAST_WORK && item.status !== 'dropped')) return undefined;
  const { problem } = leastWorkInputOf({ instrument, readings, cycle, intent, terms, touch });
  const plan = problem === undefined ? undefined : leastWork(problem);
  return plan?.ok === true ? plan.value : undefined;
}

const PROVED_BY_KEY: ReadonlySet<string> = new Set(['touch', 'belly', 'regulation', 'tuning']);

/** True where a proof has anything to say: a weight, a bearing, a figure of regulation or of tuning of a key as found or as finished, a note heard then, or a string of any state. */
export function hasAnythingToProve({ readings, sounds = [], cycle }: Pick<ProofMaterial, 'readings' | 'sounds' | 'cycle'>): boolean {
  const isRead = readings.some(({ quantity, scope, state, cycle: of }) => {
    const { part } = quantityOf(quantity);
    return of === cycle && (part === 'strings' || (scope === 'key' && state !== 'planned' && PROVED_BY_KEY.has(part)));
  });
  return isRead || toneOfMaterial(sounds, cycle) !== undefined;
}

function isNoted({ readings, cycle }: ProofMaterial, state: State, part: 'strings' | 'belly' | 'regulation'): boolean {
  return readings.some((reading) => reading.cycle === cycle && reading.state === state && quantityOf(reading.quantity).part === part && (part === 'strings' || reading.scope === 'key'));
}

type ScaleAt = (state: State) => ProvedScale;

/** The strings of each state, worked out when first asked for and then no more. */
function scalesOnce(material: ProofMaterial): ScaleAt {
  const known = new Map<State, ProvedScale>();
  return (state) => {
    const scale = known.get(state) ?? scaleOf(material, state);
    known.set(state, scale);
    return scale;
  };
}

function scaleOf({ instrument: { firstMidi, lastMidi, a4Hz = 440, sections = [] }, readings, cycle, terms = null }: ProofMaterial, state: State): ProvedScale {
  const { input, assumed } = scaleInputOf({ instrument: { firstMidi, lastMidi, a4Hz, sections }, readings, cycle, state, terms });
  return { state, analysis: analyseScale(input), assumed };
}

function scalesOf(material: ProofMaterial, scaleAt: ScaleAt): readonly ProvedScale[] {
  return states.filter((state) => isNoted(material, state, 'strings')).map(scaleAt);
}

/** Bearing as found and as finished; strings that were not taken down again stand as planned, and the assumptions say so. */
function belliesOf(material: ProofMaterial, scaleAt: ScaleAt): readonly ProvedBelly[] {
  const { instrument: { firstMidi, lastMidi, sections = [] }, readings, cycle, terms = null } = material;
  return (['found', 'finished'] as const).filter((state) => isNoted(material, state, 'belly')).map((state) => {
    const strings = scaleAt(state).analysis.notes;
    const plannedStrings = state === 'finished' ? scaleAt('planned').analysis.notes : [];
    const { input, assumed } = bearingInputOf({ instrument: { firstMidi, lastMidi, sections }, readings, cycle, state, terms, strings, plannedStrings });
    return { state, analysis: analyseBelly(input), asked: input.asked, assumed };
  });
}

function regulationsOf(material: ProofMaterial, kind: 'grand' | 'upright'): readonly ProvedRegulation[] {
  const { instrument: { firstMidi, lastMidi }, readings, cycle, action = null } = material;
  return (['found', 'finished'] as const).filter((state) => isNoted(material, state, 'regulation')).map((state) => {
    const { input, assumed, spread } = regulationInputOf({ instrument: { kind, firstMidi, lastMidi }, readings, cycle, state, terms: action });
    return { state, analysis: analyseRegulation(input), assumed, tolerances: input.tolerances, spread };
  });
}
