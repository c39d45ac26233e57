import { type State, states } from '#instrument';
import { useQuery } from '@tanstack/react-query';
import { memo, useCallback, useState, useSyncExternalStore } from 'react';
import { usePiano } from '../api/piano.tsx';
import { readingsQuery } from '../api/queries.ts';
import { useSay } from '../language/use-say.ts';
import { StateMark } from '../leaves/state-mark.tsx';
import { ProblemNote } from '../shell/problem-note.tsx';
import { Choice } from '../ui/choice.tsx';
import { Note } from '../ui/note.tsx';
import { ArmsView } from './arms/arms-view.tsx';
import { useAskedWalk } from './asked-walk.ts';
import { DeskProvider, useDesk } from './desk.tsx';
import { EmptyReadings } from './empty-readings.tsx';
import { TouchGrid } from './grid/touch-grid.tsx';
import { Undecided } from './grid/undecided.tsx';
import { ExportLinks } from './import/export-links.tsx';
import { ImportDialog } from './import/import-dialog.tsx';
import { useImport } from './import/use-import.ts';
import { useKept } from '../kept/kept.ts';
import { SessionBar } from './session/session-bar.tsx';
import { WalkView } from './walk/walk-view.tsx';
import './readings.css';

const modes = ['walk', 'grid', 'arms'] as const;
type Mode = (typeof modes)[number];

const NARROW = '(max-width: 860px)';

/** Bench capture: the readings of one state, walked key by key, typed into a grid, or brought in from a file. */
export function ReadingsPage() {
  const say = useSay();
  const { id, cycle, isCurrent } = usePiano();
  useAskedWalk();
  const [state, setState] = useKept<State>(`wrestplank.state.${id}`, 'found');
  // Whether they are there is all this page asks: the sheet follows the readings themselves.
  const { data: isThere, error, refetch } = useQuery({ ...readingsQuery(id, cycle), select: isFetched });
  if (isThere !== true) {
    return <section className="page">{error === null ? <p className="soft">{say('shell.loading')}</p> : <ProblemNote problem={error} onRetry={() => void refetch()} />}</section>;
  }
  return (
    <section className="page readings" aria-labelledby="readings-title">
      <h2 id="readings-title" className="visually-hidden">{say('readings.title')}</h2>
      {!isCurrent && <Note tone="warn">{say('readings.earlierCycle')}</Note>}
      <DeskProvider key={`${id} ${String(cycle)} ${state}`} state={state}>
        <Bench onState={setState} />
      </DeskProvider>
    </section>
  );
}

const isFetched = (): true => true;

/** The ways to take figures down; where the screen is narrow, or nothing is measured yet, the walk comes first. */
const Bench = memo(function Bench({ onState }: { readonly onState: (state: State) => void }) {
  const say = useSay();
  const { id } = usePiano();
  const { sheet, state, canWrite } = useDesk();
  const isEmpty = useSyncExternalStore(sheet.subscribe, useCallback(() => sheet.rows(state).every(({ cells }) => cells.size === 0), [sheet, state]));
  const [mode, setMode] = useKept<Mode>(`wrestplank.mode.${id}`, window.matchMedia(NARROW).matches ? 'walk' : 'grid');
  const [isImporting, setImporting] = useState(false);
  const importing = useImport();
  const shown = canWrite ? mode : mode === 'walk' ? 'grid' : mode;
  return (
    <>
      <div className="row row-between readings-choices">
        <Choice label={say('readings.state')} value={state} options={states.map((value) => ({ value, label: <StateMark state={value} /> }))} onChange={onState} />
        <Choice label={say('readings.mode')} value={shown} options={modes.filter((value) => canWrite || value !== 'walk').map((value) => ({ value, label: say(`readings.mode.${value}`) }))} onChange={setMode} />
      </div>
      <SessionBar />
      {shown !== 'walk' && (
        <div className="row">
          {canWrite && <button type="button" className="button" onClick={() => { setImporting(true); }}>{say('readings.import')}</button>}
          <ExportLinks />
        </div>
      )}
      {shown !== 'walk' && <Undecided />}
      {isEmpty && canWrite && shown === 'grid' && <EmptyReadings onWalk={() => { setMode('walk'); }} onImport={() => { setImporting(true); }} />}
      {shown === 'walk' && <WalkView onGrid={() => { setMode('grid'); }} />}
      {shown === 'walk' && <Undecided />}
      {shown === 'grid' && <TouchGrid />}
      {shown === 'arms' && <ArmsView />}
      {isImporting && <ImportDialog importing={importing} onClose={() => { setImporting(false); }} />}
    </>
  );
});
