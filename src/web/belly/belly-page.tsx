import { type KeyNumber, type State, states } from '#instrument';
import { useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useKept } from '../kept/kept.ts';
import { ChooseKey } from '../keys/choose-key.tsx';
import { useSay } from '../language/use-say.ts';
import { StateMark } from '../leaves/state-mark.tsx';
import { DeskProvider } from '../readings/desk.tsx';
import { ProblemNote } from '../shell/problem-note.tsx';
import { WhenReadings } from '../shell/when-readings.tsx';
import { useStateTerms } from '../strings/use-state-terms.ts';
import { Choice } from '../ui/choice.tsx';
import { BearingGrid } from './bearing-grid.tsx';
import { BearingTermsForm } from './bearing-terms-form.tsx';
import { BearingTermsLine } from './bearing-terms-line.tsx';
import { BellyAndNote } from './belly-and-note.tsx';
import { type BellyView, bellyViews, useBellyCommands } from './belly-commands.ts';
import { Cautions } from './cautions.tsx';
import { ClimateLine } from './climate-line.tsx';
import { NothingBorne } from './nothing-borne.tsx';
import { Seen } from './observations/seen.tsx';
import { RecapView } from './recap/recap-view.tsx';
import { useBellies } from './use-bellies.ts';
import './belly.css';

/** The belly of a piano: bearing note by note, what the board carries, the bridge recapped, and what was seen of it. */
export function BellyPage() {
  return <WhenReadings><Belly /></WhenReadings>;
}

function Belly() {
  const say = useSay();
  const { id, cycle, isCurrent } = usePiano();
  const bellies = useBellies();
  const [state, setState] = useKept<State>(`wrestplank.belly.state.${id}`, 'found');
  const [view, setView] = useKept<BellyView>(`wrestplank.belly.view.${id}`, 'bearing');
  const [key, setKey] = useState<KeyNumber>();
  const [isAsking, setAsking] = useState(false);
  const [isChoosing, setChoosing] = useState(false);
  const stating = useStateTerms();
  const shown = bellies.find((one) => one.state === state) ?? bellies[0];
  const showKey = (chosen: KeyNumber): void => { setView('bearing'); setKey(chosen); };
  useBellyCommands({
    belly: shown, selected: key, canWrite: isCurrent,
    onKey: showKey, onChoose: () => { setChoosing(true); }, onTerms: () => { setAsking(true); }, onState: setState, onView: setView,
  });
  return (
    <section className="page belly-page" aria-labelledby="belly-title">
      <h2 id="belly-title" className="visually-hidden">{say('belly.title')}</h2>
      <div className="row row-between">
        {view === 'recap' ? <p className="soft">{say('belly.recap.fromTo')}</p> : <Choice label={say('readings.state')} value={state} options={states.map((value) => ({ value, label: <StateMark state={value} /> }))} onChange={setState} />}
        <Choice label={say('strings.view')} value={view} options={bellyViews.map((value) => ({ value, label: say(`belly.view.${value}`) }))} onChange={setView} />
      </div>
      {isAsking
        ? <BearingTermsForm isBusy={stating.isPending} onState={(terms, onKept) => { stating.mutate({ terms, onKept: () => { onKept(); setAsking(false); } }); }} onClose={() => { setAsking(false); }} />
        : view !== 'seen' && <BearingTermsLine onChange={() => { setAsking(true); }} />}
      {stating.error !== null && <ProblemNote problem={stating.error} />}
      {view === 'bearing' && <ClimateLine state={shown?.state ?? state} />}
      {view === 'bearing' && (shown === undefined ? <NothingBorne onHeights={() => { setView('heights'); }} /> : <BellyAndNote bellies={bellies} shown={shown} selected={key} onKey={setKey} />)}
      {view === 'heights' && <DeskProvider key={`${id} ${String(cycle)} ${state}`} state={state}><BearingGrid bellies={bellies} /></DeskProvider>}
      {view === 'recap' && <RecapView found={bellies.find((one) => one.state === 'found')} onKey={showKey} />}
      {view === 'seen' && <Seen state={state} />}
      <Cautions />
      {isChoosing && <ChooseKey onKey={showKey} onClose={() => { setChoosing(false); }} />}
    </section>
  );
}
