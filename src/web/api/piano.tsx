import { type ActionTerms, type Compass, type Instrument, type Observation, type ScaleTerms, type TouchIntent, type WeighingSession, compassOf } from '#instrument';
import type { WorkItem } from '#workshop';
import { type ReactNode, createContext, useContext, useMemo } from 'react';
import type { PianoFile } from './queries.ts';

/** The piano a page is about, as loaded, seen in one of its stays in the shop. */
export interface Piano {
  readonly id: string;
  readonly instrument: Instrument;
  readonly compass: Compass;
  /** The cycle looked at; the current one unless the reader chose an earlier. */
  readonly cycle: number;
  /** False while an earlier stay is looked at: that one is read, not written. */
  readonly isCurrent: boolean;
  /** Sessions of the cycle looked at, oldest first. */
  readonly sessions: readonly WeighingSession[];
  readonly intent: TouchIntent | null;
  /** What is stated and asked of strings and bearing in the cycle looked at. */
  readonly scale: ScaleTerms | null;
  /** What is stated and asked of the action in the cycle looked at. */
  readonly action: ActionTerms | null;
  /** What was seen by eye in the cycle looked at. */
  readonly observations: readonly Observation[];
  /** Work of the cycle looked at. */
  readonly work: readonly WorkItem[];
  readonly file: PianoFile;
}

const PianoContext = createContext<Piano | null>(null);

export function PianoProvider({ file, cycle: wanted, children }: { readonly file: PianoFile; readonly cycle: number | undefined; readonly children: ReactNode }) {
  const cycle = Math.min(wanted ?? file.instrument.cycle, file.instrument.cycle);
  const piano = useMemo(() => pianoOf(file, cycle), [file, cycle]);
  return <PianoContext value={piano}>{children}</PianoContext>;
}

function pianoOf(file: PianoFile, cycle: number): Piano {
  const { instrument } = file;
  return {
    id: instrument.id,
    instrument,
    compass: compassOf(instrument),
    cycle,
    isCurrent: cycle === instrument.cycle,
    sessions: file.sessions.filter((session) => session.cycle === cycle).sort((a, b) => a.startedAt.localeCompare(b.startedAt)),
    intent: file.intents[String(cycle)] ?? null,
    scale: file.scales[String(cycle)] ?? null,
    action: file.actions[String(cycle)] ?? null,
    observations: file.observations.filter((seen) => seen.cycle === cycle),
    work: file.work.filter((item) => item.cycle === cycle),
    file,
  };
}

/** The piano of the page. @throws Error outside a piano's pages. */
export function usePiano(): Piano {
  const piano = useContext(PianoContext);
  if (piano === null) throw new Error('usePiano stands outside the pages of a piano');
  return piano;
}
