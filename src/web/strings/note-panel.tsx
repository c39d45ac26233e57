import type { KeyNumber, State } from '#instrument';
import type { AnalysedNote } from '#strings';
import { endsNear } from '#workshop';
import { Suspense, lazy, useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { IssueList } from '../shell/issue-list.tsx';
import { Note } from '../ui/note.tsx';
import { GaugeEffect } from './gauge-effect.tsx';
import { NoteFiguresTable } from './note-figures-table.tsx';
import type { StateScale } from './state-scale.ts';
import type { TrialDesk } from './use-trial.ts';
import { WhatIf } from './what-if.tsx';
import { KeyPanelFrame } from '../keys/key-panel-frame.tsx';

interface NotePanelProps {
  readonly keyNumber: KeyNumber;
  readonly scales: readonly StateScale[];
  readonly state: State;
  readonly trial: TrialDesk;
  readonly onKey: (key: KeyNumber) => void;
}

/** Designing a winding comes when it is asked for. */
const WindingDesign = lazy(async () => ({ default: (await import('./rescale/winding-design.tsx')).WindingDesign }));

/** One note: how it stands to what is asked, its figures in every state, what another size would do, and sizes to try. */
export function NotePanel({ keyNumber, scales, state, trial, onKey }: NotePanelProps) {
  const { isCurrent } = usePiano();
  const noteIn = (scale: StateScale | undefined): AnalysedNote | undefined => scale?.analysis.notes.find(({ key }) => key === keyNumber);
  const plan = scales.find((one) => one.state === 'planned');
  const note = noteIn(scales.find((one) => one.state === state));
  const [planned, found] = [noteIn(plan), noteIn(scales.find((one) => one.state === 'found'))];
  const isOutside = note?.verdict !== undefined && note.verdict.side !== 'within';
  return (
    <KeyPanelFrame keyNumber={keyNumber} onKey={onKey} className="note-panel">
      {note !== undefined && <Standing note={note} />}
      {isOutside && <GaugeEffect note={note} isOutside />}
      {isCurrent && <WhatIf keyNumber={keyNumber} note={planned ?? found} plate={plan?.analysis.plate} trial={trial} />}
      {isCurrent && note !== undefined && <DesignOne key={keyNumber} note={planned ?? found ?? note} notes={(plan ?? scales[0])?.analysis.notes ?? []} trial={trial} />}
      <NoteFiguresTable keyNumber={keyNumber} scales={scales} />
      {note !== undefined && !isOutside && <GaugeEffect note={note} isOutside={false} />}
    </KeyPanelFrame>
  );
}

/** A winding designed for the note, once it is opened. */
function DesignOne({ note, notes, trial }: { readonly note: AnalysedNote; readonly notes: readonly AnalysedNote[]; readonly trial: TrialDesk }) {
  const say = useSay();
  const [isOpen, setOpen] = useState(false);
  return (
    <details open={isOpen} onToggle={(event) => { setOpen(event.currentTarget.open); }}>
      <summary>{say('windingDesign.title')}</summary>
      {isOpen && <Suspense fallback={<p role="status">{say('rescale.loading')}</p>}><WindingDesign note={note} ends={endsNear(notes, note.key)} trial={trial} /></Suspense>}
    </details>
  );
}

/** How a note stands: outside or within what is asked, or why it has no figures. */
function Standing({ note }: { readonly note: AnalysedNote }) {
  const say = useSay();
  const figure = useFigures();
  const { fault, issues, figures, verdict, speakingLengthMm, wire } = note;
  if (fault !== undefined) return <Note tone="bad"><strong aria-hidden="true">✕ </strong>{say(`strings.fault.${fault}`)}</Note>;
  if (issues.length > 0) return <Note tone="bad"><p><strong aria-hidden="true">✕ </strong>{say('strings.issues')}</p><IssueList issues={issues} /></Note>;
  if (figures === undefined) return <p className="soft">{say(speakingLengthMm === undefined && wire === undefined ? 'strings.missing.both' : wire === undefined ? 'strings.missing.wire' : 'strings.missing.length')}</p>;
  if (verdict === undefined) return <p className="soft">{say('strings.notAsked')}</p>;
  return (
    <p>
      <strong>{say(`strings.verdict.${verdict.side}`, { margin: figure(verdict.marginPct, 1) })}</strong>
      {verdict.isDoubtful && ` · ${say('strings.verdict.doubtful')}`}
    </p>
  );
}
