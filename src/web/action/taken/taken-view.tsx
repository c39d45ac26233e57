import { type Part, type State, states } from '#instrument';
import { useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useKept } from '../../kept/kept.ts';
import { useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import { DeskProvider, useDesk } from '../../readings/desk.tsx';
import { ExportLinks } from '../../readings/import/export-links.tsx';
import { ImportDialog } from '../../readings/import/import-dialog.tsx';
import { useImport } from '../../readings/import/use-import.ts';
import { Choice } from '../../ui/choice.tsx';
import { Note } from '../../ui/note.tsx';
import { PartFields } from './part-fields.tsx';
import { PartGrid } from './part-grid.tsx';
import './taken.css';

const parts = ['leads', 'regulation', 'hammers'] as const satisfies readonly Part[];
type TakenPart = (typeof parts)[number];

/** What is taken down of leads, regulation and hammers, key by key, and what goes for all keys. */
export function TakenView() {
  const say = useSay();
  const { id, cycle } = usePiano();
  const [state, setState] = useKept<State>(`wrestplank.action.state.${id}`, 'found');
  const [part, setPart] = useKept<TakenPart>(`wrestplank.action.part.${id}`, 'leads');
  return (
    <>
      <div className="row row-between">
        <Choice label={say('readings.state')} value={state} options={states.map((value) => ({ value, label: <StateMark state={value} /> }))} onChange={setState} />
        <Choice label={say('action.taken.part')} value={part} options={parts.map((value) => ({ value, label: say(`action.taken.${value}`) }))} onChange={setPart} />
      </div>
      {part === 'leads' && <Note tone="warn" role="note"><p><span aria-hidden="true">⚠ </span>{say('action.taken.lead')}</p></Note>}
      <DeskProvider key={`${id} ${String(cycle)} ${state}`} state={state}><Taken part={part} /></DeskProvider>
    </>
  );
}

function Taken({ part }: { readonly part: TakenPart }) {
  const say = useSay();
  const { canWrite } = useDesk();
  const [isImporting, setImporting] = useState(false);
  const importing = useImport();
  return (
    <>
      {canWrite && (
        <div className="row">
          <button type="button" className="button" onClick={() => { setImporting(true); }}>{say('readings.import')}</button>
          <ExportLinks />
        </div>
      )}
      <PartFields part={part} />
      <PartGrid key={part} part={part} />
      {isImporting && <ImportDialog importing={importing} onClose={() => { setImporting(false); }} />}
    </>
  );
}
