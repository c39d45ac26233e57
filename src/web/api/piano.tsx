import { type Compass, type Instrument, compassOf } from '#instrument';
import { type Stay, stayOf } from '#workshop';
import { type ReactNode, createContext, useContext, useMemo } from 'react';
import type { PianoFile } from './queries.ts';

/** The piano a page is about, as loaded, seen in one of its stays in the shop: the current one unless the reader chose an earlier. */
export interface Piano extends Stay {
  readonly id: string;
  readonly instrument: Instrument;
  readonly compass: Compass;
  /** False while an earlier stay is looked at: that one is read, not written. */
  readonly isCurrent: boolean;
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
  return { ...stayOf(file, cycle), id: instrument.id, instrument, compass: compassOf(instrument), isCurrent: cycle === instrument.cycle, file };
}

/** The piano of the page. @throws Error outside a piano's pages. */
export function usePiano(): Piano {
  const piano = useContext(PianoContext);
  if (piano === null) throw new Error('usePiano stands outside the pages of a piano');
  return piano;
}
