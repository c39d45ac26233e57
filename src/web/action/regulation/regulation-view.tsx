import { type KeyNumber, type State, states } from '#instrument';
import { regulationSignsOf } from '#plot';
import { useMemo, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useKept } from '../../kept/kept.ts';
import { ChooseKey } from '../../keys/choose-key.tsx';
import { KeysWithPlots } from '../../keys/keys-with-plots.tsx';
import { useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { Choice } from '../../ui/choice.tsx';
import { useTakePart } from '../taken/take-part.ts';
import { NothingTaken } from '../terms/nothing-taken.tsx';
import { useStateAction } from '../use-state-action.ts';
import { keyAfter, useFindingCommands } from './regulation-commands.ts';
import { RegulationPanel } from './regulation-panel.tsx';
import { RegulationPlots } from './regulation-plots.tsx';
import { RegulationAsked, RegulationSummary } from './regulation-summary.tsx';
import { RegulationTermsForm } from './regulation-terms-form.tsx';
import { SheetLinks, useSheetAddress } from './sheet-links.tsx';
import { type StateRegulation, useRegulations } from './state-regulation.ts';
import './regulation.css';

/** The regulation of a piano: what it is to be, the states compared, and the keys with what is found and what to turn. */
export function RegulationView() {
  const say = useSay();
  const { id, isCurrent } = usePiano();
  const regulations = useRegulations();
  const [state, setState] = useKept<State>(`wrestplank.action.state.${id}`, 'found');
  const [key, setKey] = useState<KeyNumber>();
  const [isAsking, setAsking] = useState(false);
  const [isChoosing, setChoosing] = useState(false);
  const stating = useStateAction();
  const shown = regulations.find((one) => one.state === state) ?? regulations[0];
  const found = useMemo(() => shown?.analysis.keys.flatMap((one) => (one.findings.length > 0 ? [one.key] : [])) ?? [], [shown]);
  const address = useSheetAddress('regulation', shown?.state ?? state);
  useFindingCommands('regulation', 'command.regulation.terms', {
    found, selected: key, canWrite: isCurrent, onKey: setKey, onChoose: () => { setChoosing(true); }, onTerms: () => { setAsking(true); }, onState: setState,
    onSheet: () => { window.open(address('pdf'), '_blank', 'noreferrer'); },
  });
  return (
    <>
      <div className="row row-between">
        <Choice label={say('readings.state')} value={state} options={states.map((value) => ({ value, label: <StateMark state={value} /> }))} onChange={setState} />
      </div>
      {isAsking
        ? <RegulationTermsForm isBusy={stating.isPending} onState={(terms, onKept) => { stating.mutate({ terms, onKept: () => { onKept(); setAsking(false); } }); }} onClose={() => { setAsking(false); }} />
        : <AskedLine onChange={() => { setAsking(true); }} />}
      {stating.error !== null && <ProblemNote problem={stating.error} />}
      {shown === undefined ? <NothingRegulated /> : <Regulated regulations={regulations} shown={shown} found={found} selected={key} onKey={setKey} />}
      <SheetLinks sheet="regulation" state={shown?.state ?? state} />
      {isChoosing && <ChooseKey onKey={setKey} onClose={() => { setChoosing(false); }} />}
    </>
  );
}

function AskedLine({ onChange }: { readonly onChange: () => void }) {
  const say = useSay();
  const { action, isCurrent } = usePiano();
  const isAsked = action !== null && (action.regulation.length > 0 || action.keyLevelMm !== null || action.sharpHeightMm !== null);
  return (
    <div className="row row-between terms-line">
      <p><strong>{isAsked ? say('regulation.asked.stated', { floats: action.regulationFloats ?? 'none' }) : say('regulation.asked.nothing')}</strong></p>
      {isCurrent && <button type="button" className="button no-print" onClick={onChange}>{say('regulation.asked.change')}</button>}
    </div>
  );
}

function NothingRegulated() {
  const say = useSay();
  const take = useTakePart();
  return <NothingTaken title={say('regulation.empty.title')} lines={[say('regulation.empty.first'), say('regulation.empty.then')]} go={say('regulation.empty.go')} onGo={() => { take('regulation'); }} />;
}

interface RegulatedProps {
  readonly regulations: readonly StateRegulation[];
  readonly shown: StateRegulation;
  readonly found: readonly KeyNumber[];
  readonly selected: KeyNumber | undefined;
  readonly onKey: (key: KeyNumber) => void;
}

function Regulated({ regulations, shown, found, selected, onKey }: RegulatedProps) {
  const say = useSay();
  const signs = useMemo(() => regulationSignsOf(shown.analysis), [shown]);
  const first = keyAfter(found, undefined, 1);
  return (
    <>
      <RegulationSummary regulations={regulations} />
      <KeysWithPlots
        signs={signs} selected={selected} onKey={onKey} keysLabel={say('regulation.keyboard')} plotsLabel={say('regulation.plots')}
        plots={(widthPx) => <RegulationPlots regulations={regulations} widthPx={widthPx} selected={selected} onSelect={onKey} />}
      >
        {selected === undefined ? (
          <section className="panel">
            <h2>{say('action.choose')}</h2>
            <p>{say('regulation.pick')}</p>
            {first !== undefined && <p><button type="button" className="button" onClick={() => { onKey(first); }}>{say('regulation.first')}</button></p>}
          </section>
        ) : (
          <RegulationPanel keyNumber={selected} regulations={regulations} state={shown.state} onKey={onKey} />
        )}
        <RegulationAsked regulation={shown} />
        {shown.gathered.assumed.length > 0 && (
          <section className="panel" aria-labelledby="regulation-assumed">
            <h2 id="regulation-assumed">{say('regulation.assumed')}</h2>
            <ul className="assumed">{shown.gathered.assumed.map((what) => <li key={what}>{say(`regulation.assumed.${what}`)}</li>)}</ul>
          </section>
        )}
      </KeysWithPlots>
    </>
  );
}
