import { type KeyNumber, type State, states } from '#instrument';
import { tuningSignsOf } from '#plot';
import { explainIssue } from '#text';
import { useMemo, useRef, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { type Command, useCommands } from '../../commands/registry.ts';
import { useKept } from '../../kept/kept.ts';
import { ChooseKey } from '../../keys/choose-key.tsx';
import { KeysWithPlots } from '../../keys/keys-with-plots.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import { SheetLinks } from '../../action/regulation/sheet-links.tsx';
import { Choice } from '../../ui/choice.tsx';
import { Note } from '../../ui/note.tsx';
import { DriftPanel } from './drift-panel.tsx';
import { PassesPanel } from './passes-panel.tsx';
import { TargetsTable } from './targets-table.tsx';
import { TemperamentPanel } from './temperament-panel.tsx';
import { TuningAssumed } from './tuning-assumed.tsx';
import { TuningKeyPanel } from './tuning-key-panel.tsx';
import { TuningPlots } from './tuning-plots.tsx';
import { TuningSummary } from './tuning-summary.tsx';
import { TuningTermsForm } from './tuning-terms-form.tsx';
import { type Tuning, useTuning } from './use-tuning.ts';
import '../../action/action.css';
import './tuning.css';

/** The tuning of a piano: the curve of its own strings, pitches and unisons against it, passes, drift and the next visit. */
export function TuningView() {
  const say = useSay();
  const { id, isCurrent } = usePiano();
  const [state, setState] = useKept<State>(`wrestplank.tone.tuning.state.${id}`, 'found');
  const tuning = useTuning(state);
  const [key, setKey] = useState<KeyNumber>();
  const [isAsking, setAsking] = useState(false);
  const [isNoting, setNoting] = useState(false);
  const [isChoosing, setChoosing] = useState(false);
  useTuningCommands({ canWrite: isCurrent, onTerms: () => { setAsking(true); }, onNote: () => { setNoting(true); }, onChoose: () => { setChoosing(true); } });
  return (
    <>
      <div className="row row-between">
        <Choice label={say('tuning.strings')} value={state} options={states.map((value) => ({ value, label: <StateMark state={value} /> }))} onChange={setState} />
        {isCurrent && !isAsking && <button type="button" className="button no-print" onClick={() => { setAsking(true); }}>{say('tuning.terms.change')}</button>}
      </div>
      {isAsking && <TuningTermsForm onClose={() => { setAsking(false); }} />}
      {tuning.gathered.input === undefined && <NothingToLay />}
      {tuning.issues.length > 0 && <Refused tuning={tuning} />}
      {tuning.targets.size > 0 && <Laid tuning={tuning} state={state} selected={key} onKey={setKey} />}
      <div className="tuning-below">
        <PassesPanel isNoting={isNoting} onNote={setNoting} />
        <DriftPanel />
      </div>
      {isChoosing && <ChooseKey onKey={setKey} onClose={() => { setChoosing(false); }} />}
    </>
  );
}

interface LaidProps {
  readonly tuning: Tuning;
  readonly state: State;
  readonly selected: KeyNumber | undefined;
  readonly onKey: (key: KeyNumber) => void;
}

function Laid({ tuning, state, selected, onKey }: LaidProps) {
  const say = useSay();
  const { tuning: terms } = usePiano();
  const signs = useMemo(() => tuningSignsOf(tuning.read.findLast(({ off }) => off.size > 0)?.off ?? new Map<KeyNumber, number>(), terms?.curveToleranceCt ?? undefined), [tuning, terms]);
  return (
    <>
      <KeysWithPlots signs={signs} selected={selected} onKey={onKey} keysLabel={say('tuning.keyboard')} plotsLabel={say('tuning.plots')} plots={(widthPx) => <TuningPlots tuning={tuning} widthPx={widthPx} selected={selected} onSelect={onKey} />}>
        {selected === undefined ? (
          <section className="panel">
            <h2>{say('action.choose')}</h2>
            <p>{say('tuning.pick')}</p>
            <TuningSummary tuning={tuning} />
          </section>
        ) : <TuningKeyPanel keyNumber={selected} tuning={tuning} state={state} onKey={onKey} />}
        <TuningAssumed tuning={tuning} />
        <SheetLinks sheet="tuning" state={state} />
      </KeysWithPlots>
      <TargetsTable tuning={tuning} state={state} />
      <TemperamentPanel />
    </>
  );
}

function NothingToLay() {
  const say = useSay();
  return (
    <section className="panel">
      <h2>{say('tuning.empty.title')}</h2>
      <p>{say('tuning.empty.strings')}</p>
      <p>{say('tuning.empty.recordings')}</p>
    </section>
  );
}

function Refused({ tuning: { issues } }: { readonly tuning: Tuning }) {
  const say = useSay();
  const locale = useLocale();
  return <Note tone="bad" role="alert"><p>{say('tuning.refused')} {issues.map((issue) => explainIssue(say, issue, locale)).join(' ')}</p></Note>;
}

interface Doings {
  readonly canWrite: boolean;
  readonly onTerms: () => void;
  readonly onNote: () => void;
  readonly onChoose: () => void;
}

/** Registers the commands of the view; they read what stands on the page when they are told. */
function useTuningCommands(doings: Doings): void {
  const latest = useRef(doings);
  latest.current = doings;
  useCommands(useMemo((): readonly Command[] => {
    const group = 'command.group.tone';
    const when = (): boolean => latest.current.canWrite;
    return [
      { id: 'tuning.choose', label: 'command.action.choose', group, shortcut: 'k', perform: () => { latest.current.onChoose(); } },
      { id: 'tuning.terms', label: 'command.tuning.terms', group, perform: () => { latest.current.onTerms(); }, when },
      { id: 'tuning.pass', label: 'command.tuning.pass', group, perform: () => { latest.current.onNote(); }, when },
    ];
  }, []));
}
