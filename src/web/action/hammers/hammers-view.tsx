import { type KeyNumber, type State, noteNameOf, states } from '#instrument';
import { hammerSignsOf } from '#plot';
import { useMemo, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useKept } from '../../kept/kept.ts';
import { ChooseKey } from '../../keys/choose-key.tsx';
import { sayRuns } from '../../keys/key-runs.ts';
import { KeysWithPlots } from '../../keys/keys-with-plots.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { Choice } from '../../ui/choice.tsx';
import { useFindingCommands } from '../regulation/regulation-commands.ts';
import { useTakePart } from '../taken/take-part.ts';
import { NothingTaken } from '../terms/nothing-taken.tsx';
import { useStateAction } from '../use-state-action.ts';
import { HammerLifePanel } from './hammer-life.tsx';
import { HammerPanel } from './hammer-panel.tsx';
import { HammerPlots } from './hammer-plots.tsx';
import { HammerSections } from './hammer-sections.tsx';
import { HammerTermsForm } from './hammer-terms-form.tsx';
import { type StateHammers, useHammers } from './state-hammers.ts';
import '../regulation/regulation.css';

/** The hammers of a piano: strike line, felt left, how they stand at the strings, and what is left of them. */
export function HammersView() {
  const say = useSay();
  const { id, isCurrent } = usePiano();
  const hammers = useHammers();
  const [state, setState] = useKept<State>(`wrestplank.action.state.${id}`, 'found');
  const [key, setKey] = useState<KeyNumber>();
  const [isAsking, setAsking] = useState(false);
  const [isChoosing, setChoosing] = useState(false);
  const stating = useStateAction();
  const shown = hammers.find((one) => one.state === state) ?? hammers[0];
  const found = useMemo(() => shown?.analysis.keys.flatMap((one) => (one.findings.length > 0 ? [one.key] : [])) ?? [], [shown]);
  useFindingCommands('hammers', 'command.hammers.terms', {
    found, selected: key, canWrite: isCurrent, onKey: setKey, onChoose: () => { setChoosing(true); }, onTerms: () => { setAsking(true); }, onState: setState,
  });
  return (
    <>
      <div className="row row-between">
        <Choice label={say('readings.state')} value={state} options={states.map((value) => ({ value, label: <StateMark state={value} /> }))} onChange={setState} />
        {isCurrent && !isAsking && <button type="button" className="button no-print" onClick={() => { setAsking(true); }}>{say('hammers.terms')}</button>}
      </div>
      {isAsking && <HammerTermsForm isBusy={stating.isPending} onState={(terms, onKept) => { stating.mutate({ terms, onKept: () => { onKept(); setAsking(false); } }); }} onClose={() => { setAsking(false); }} />}
      {stating.error !== null && <ProblemNote problem={stating.error} />}
      {shown === undefined ? <><NothingHammered /><HammerLifePanel /></> : <Hammered hammers={hammers} shown={shown} selected={key} onKey={setKey} />}
      {isChoosing && <ChooseKey onKey={setKey} onClose={() => { setChoosing(false); }} />}
    </>
  );
}

function NothingHammered() {
  const say = useSay();
  const take = useTakePart();
  return <NothingTaken title={say('hammers.empty.title')} lines={[say('hammers.empty.first')]} go={say('hammers.empty.go')} onGo={() => { take('hammers'); }} />;
}

interface HammeredProps {
  readonly hammers: readonly StateHammers[];
  readonly shown: StateHammers;
  readonly selected: KeyNumber | undefined;
  readonly onKey: (key: KeyNumber) => void;
}

function Hammered({ hammers, shown, selected, onKey }: HammeredProps) {
  const say = useSay();
  const { compass } = usePiano();
  const signs = useMemo(() => hammerSignsOf(shown.analysis), [shown]);
  return (
    <KeysWithPlots
      signs={signs} selected={selected} onKey={onKey} keysLabel={say('hammers.keyboard')} plotsLabel={say('hammers.plots')}
      plots={(widthPx) => <HammerPlots states={hammers} widthPx={widthPx} selected={selected} onSelect={onKey} />}
    >
      {selected === undefined ? (
        <section className="panel">
          <h2>{say('action.choose')}</h2>
          <p>{say('hammers.pick')}</p>
          <FeltLine hammers={shown} />
        </section>
      ) : (
        <HammerPanel keyNumber={selected} states={hammers} state={shown.state} onKey={onKey} />
      )}
      <HammerSections hammers={shown} />
      <HammerLifePanel />
      {shown.gathered.assumed.length > 0 && (
        <section className="panel" aria-labelledby="hammers-assumed">
          <h2 id="hammers-assumed">{say('regulation.assumed')}</h2>
          <ul className="assumed">{shown.gathered.assumed.map(({ what, notes }) => <li key={what}>{say(`hammers.assumed.${what}`)} <span className="soft small">{sayRuns(notes, compass)}</span></li>)}</ul>
        </section>
      )}
    </KeysWithPlots>
  );
}

function FeltLine({ hammers: { analysis: { felt } } }: { readonly hammers: StateHammers }) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  if (felt.leastMm === undefined || felt.leastKey === undefined) return null;
  return <p>{say('hammers.plot.feltOverWoodMm')}: {say('hammers.felt', { thin: felt.thin, read: felt.read, least: figure(felt.leastMm, 1, 'mm'), note: noteNameOf(compass, felt.leastKey) })}</p>;
}
