import { type Part, type State, states } from '#instrument';
import { usePiano } from '../../api/piano.tsx';
import { useKept } from '../../kept/kept.ts';
import { useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import { DeskProvider } from '../../readings/desk.tsx';
import { ArmsTable, hasArms } from '../../readings/arms/arms-table.tsx';
import { FilesRow } from '../../readings/import/files-row.tsx';
import { Choice } from '../../ui/choice.tsx';
import { Note } from '../../ui/note.tsx';
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
  return (
    <>
      <FilesRow />
      {hasArms(part) && <div className="panel"><ArmsTable part={part} /></div>}
      <PartGrid key={part} part={part} />
    </>
  );
}
