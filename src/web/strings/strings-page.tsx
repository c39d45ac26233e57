import { type KeyNumber, type State, states } from '#instrument';
import { Suspense, lazy, useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useKept } from '../kept/kept.ts';
import { ChooseKey } from '../keys/choose-key.tsx';
import { useSay } from '../language/use-say.ts';
import { StateMark } from '../leaves/state-mark.tsx';
import { DeskProvider } from '../readings/desk.tsx';
import { ProblemNote } from '../shell/problem-note.tsx';
import { WhenReadings } from '../shell/when-readings.tsx';
import { Choice } from '../ui/choice.tsx';
import { Note } from '../ui/note.tsx';
import { Caution } from './caution.tsx';
import { NothingStrung } from './nothing-strung.tsx';
import { OrderLinks } from './order-links.tsx';
import { ScaleAndNote } from './scale-and-note.tsx';
import { StringsGrid } from './strings-grid.tsx';
import { useStringsCommands } from './strings-commands.ts';
import { TermsForm } from './terms-form.tsx';
import { TermsLine } from './terms-line.tsx';
import { useScales } from './use-scales.ts';
import { useStateTerms } from './use-state-terms.ts';
import { useTrial } from './use-trial.ts';
import './strings.css';

/** The strings of a piano: sizes and lengths taken down, what follows from them, states compared, other sizes tried. */
export function StringsPage() {
  return <WhenReadings><Strings /></WhenReadings>;
}

const views = ['figures', 'sizes', 'rescale'] as const;
type View = (typeof views)[number];

const NOTHING_TRIED = {};

/** Rescaling comes when it is asked for. */
const RescaleView = lazy(async () => ({ default: (await import('./rescale/rescale-view.tsx')).RescaleView }));

function Strings() {
  const say = useSay();
  const { id, cycle, isCurrent } = usePiano();
  const trial = useTrial();
  const [state, setState] = useKept<State>(`wrestplank.strings.state.${id}`, 'found');
  const [view, setView] = useKept<View>(`wrestplank.strings.view.${id}`, 'figures');
  // Beside the sizes as they are kept stands what follows from them, not from what is only tried.
  const scales = useScales(view === 'sizes' ? NOTHING_TRIED : trial.trial);
  const [key, setKey] = useState<KeyNumber>();
  const [isAsking, setAsking] = useState(false);
  const [isChoosing, setChoosing] = useState(false);
  const stating = useStateTerms();
  const shown = scales.find((one) => one.state === state) ?? scales[0];
  const showKey = (chosen: KeyNumber): void => { setView('figures'); setKey(chosen); };
  useStringsCommands({
    scale: shown, selected: key, trial, canWrite: isCurrent,
    onKey: showKey, onChoose: () => { setChoosing(true); }, onTerms: () => { setAsking(true); }, onState: setState, onView: () => { setView(view === 'figures' ? 'sizes' : 'figures'); }, onRescale: () => { setView('rescale'); },
  });
  return (
    <section className="page strings-page" aria-labelledby="strings-title">
      <h2 id="strings-title" className="visually-hidden">{say('strings.title')}</h2>
      <div className="row row-between">
        <Choice label={say('readings.state')} value={state} options={states.map((value) => ({ value, label: <StateMark state={value} /> }))} onChange={setState} />
        <Choice label={say('strings.view')} value={view} options={views.map((value) => ({ value, label: say(`strings.view.${value}`) }))} onChange={setView} />
      </div>
      {isAsking
        ? <TermsForm isBusy={stating.isPending} onState={(terms, onKept) => { stating.mutate({ terms, onKept: () => { onKept(); setAsking(false); } }); }} onClose={() => { setAsking(false); }} />
        : <TermsLine onChange={() => { setAsking(true); }} />}
      {stating.error !== null && <ProblemNote problem={stating.error} />}
      {shown === undefined && view !== 'sizes' && <NothingStrung onSizes={() => { setView('sizes'); }} />}
      {view === 'figures' && shown !== undefined && shown.state !== state && <Note>{say('strings.nothingIn', { state: say(`state.${state}`), shown: say(`state.${shown.state}`) })}</Note>}
      {view === 'figures' && shown !== undefined && <ScaleAndNote scales={scales} shown={shown} selected={key} trial={trial} onKey={setKey} />}
      {view === 'sizes' && (
        <DeskProvider key={`${id} ${String(cycle)} ${state}`} state={state}>
          <StringsGrid scales={scales} />
        </DeskProvider>
      )}
      {view === 'rescale' && shown !== undefined && <Suspense fallback={<p role="status">{say('rescale.loading')}</p>}><RescaleView found={scales.find((one) => one.state === 'found')?.analysis} trial={trial} /></Suspense>}
      {view === 'figures' && shown !== undefined && <OrderLinks state={shown.state} />}
      <Caution />
      {isChoosing && <ChooseKey onKey={showKey} onClose={() => { setChoosing(false); }} />}
    </section>
  );
}
