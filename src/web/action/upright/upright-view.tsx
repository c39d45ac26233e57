import { type KeyNumber, type State, states } from '#instrument';
import { uprightSignsOf } from '#plot';
import type { UprightMissing } from '#workshop';
import { useMemo, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useKept } from '../../kept/kept.ts';
import { ChooseKey } from '../../keys/choose-key.tsx';
import { KeysWithPlots } from '../../keys/keys-with-plots.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { Choice } from '../../ui/choice.tsx';
import { keyAfter, useFindingCommands } from '../regulation/regulation-commands.ts';
import { SheetLinks } from '../regulation/sheet-links.tsx';
import '../regulation/regulation.css';
import { useTakePart } from '../taken/take-part.ts';
import { NothingTaken } from '../terms/nothing-taken.tsx';
import { useStateAction } from '../use-state-action.ts';
import { type StateUpright, useUprights } from './state-upright.ts';
import { UprightPanel } from './upright-panel.tsx';
import { useKeepUpright } from './upright-plan.tsx';
import { UprightPlots } from './upright-plots.tsx';
import { UprightTermsForm } from './upright-terms-form.tsx';

/** Spring, damper and touch of an upright: what is asked, the states compared, what is found at each key, and the plan. */
export function UprightView() {
  const say = useSay();
  const { id, isCurrent } = usePiano();
  const uprights = useUprights();
  const [state, setState] = useKept<State>(`wrestplank.action.state.${id}`, 'found');
  const [key, setKey] = useState<KeyNumber>();
  const [isAsking, setAsking] = useState(false);
  const [isChoosing, setChoosing] = useState(false);
  const stating = useStateAction();
  const shown = uprights.find((one) => one.state === state) ?? uprights[0];
  const found = useMemo(() => shown?.keys.flatMap((one) => (one.findings.length > 0 ? [one.key] : [])) ?? [], [shown]);
  useFindingCommands('upright', 'command.upright.terms', {
    found, selected: key, canWrite: isCurrent, onKey: setKey, onChoose: () => { setChoosing(true); }, onTerms: () => { setAsking(true); }, onState: setState,
  });
  return (
    <>
      <div className="row row-between">
        <Choice label={say('readings.state')} value={state} options={states.map((value) => ({ value, label: <StateMark state={value} /> }))} onChange={setState} />
      </div>
      {isAsking
        ? <UprightTermsForm isBusy={stating.isPending} onState={(terms, onKept) => { stating.mutate({ terms, onKept: () => { onKept(); setAsking(false); } }); }} onClose={() => { setAsking(false); }} />
        : <AskedLine onChange={() => { setAsking(true); }} />}
      {stating.error !== null && <ProblemNote problem={stating.error} />}
      {shown === undefined ? <NothingSprung /> : <Sprung uprights={uprights} shown={shown} found={found} selected={key} onKey={setKey} />}
      <SheetLinks sheet="regulation" state={shown?.state ?? state} />
      {isChoosing && <ChooseKey onKey={setKey} onClose={() => { setChoosing(false); }} />}
    </>
  );
}

function AskedLine({ onChange }: { readonly onChange: () => void }) {
  const say = useSay();
  const figure = useFigures();
  const { action, isCurrent } = usePiano();
  const open = say('story.notStated');
  return (
    <div className="row row-between terms-line">
      <p>{say('upright.terms.line', {
        butt: action?.buttMm == null ? open : figure(action.buttMm, 1, 'mm'), tilt: action?.tiltDeg == null ? open : figure(action.tiltDeg, 1, 'deg'),
        spring: action?.plannedSpringTorqueGMm == null ? open : figure(action.plannedSpringTorqueGMm, 0, 'gmm'), damper: action?.plannedDamperG == null ? open : figure(action.plannedDamperG, 1, 'g'),
      })}</p>
      {isCurrent && <button type="button" className="button no-print" onClick={onChange}>{say('upright.terms.change')}</button>}
    </div>
  );
}

function NothingSprung() {
  const say = useSay();
  const take = useTakePart();
  return <NothingTaken title={say('upright.empty.title')} lines={[say('upright.empty.first'), say('upright.empty.then')]} go={say('upright.empty.go')} onGo={() => { take('regulation'); }} />;
}

interface SprungProps {
  readonly uprights: readonly StateUpright[];
  readonly shown: StateUpright;
  readonly found: readonly KeyNumber[];
  readonly selected: KeyNumber | undefined;
  readonly onKey: (key: KeyNumber) => void;
}

function Sprung({ uprights, shown, found, selected, onKey }: SprungProps) {
  const say = useSay();
  const { isCurrent } = usePiano();
  const signs = useMemo(() => uprightSignsOf(shown.keys), [shown]);
  const plan = useKeepUpright(shown.keys);
  const first = keyAfter(found, undefined, 1);
  return (
    <>
      {plan !== undefined && isCurrent && shown.state === 'found' && (
        <div className="row no-print">
          <button type="button" className="button button-main" onClick={plan.keep}>{say('upright.plan.keep', { count: plan.count })}</button>
          <span className="soft small">{say('upright.plan.keep.about')}</span>
        </div>
      )}
      <KeysWithPlots
        signs={signs} selected={selected} onKey={onKey} keysLabel={say('upright.keyboard')} plotsLabel={say('upright.plots')}
        plots={(widthPx) => <UprightPlots uprights={uprights} widthPx={widthPx} selected={selected} onSelect={onKey} />}
      >
        {selected === undefined ? (
          <section className="panel">
            <h2>{say('action.choose')}</h2>
            <p>{say('upright.found', { count: found.length })} {say('upright.pick')}</p>
            {first !== undefined && <p><button type="button" className="button" onClick={() => { onKey(first); }}>{say('upright.first')}</button></p>}
          </section>
        ) : <UprightPanel keyNumber={selected} uprights={uprights} shown={shown} onKey={onKey} />}
        <Missing names={shown.gathered.missing} />
        {shown.gathered.assumed.length > 0 && (
          <section className="panel" aria-labelledby="upright-assumed">
            <h2 id="upright-assumed">{say('regulation.assumed')}</h2>
            <ul className="assumed">{shown.gathered.assumed.map((what) => <li key={what}>{say(`upright.assumed.${what}`)}</li>)}</ul>
          </section>
        )}
      </KeysWithPlots>
    </>
  );
}

function Missing({ names }: { readonly names: readonly UprightMissing[] }) {
  const say = useSay();
  if (names.length === 0) return null;
  const nameOf = (name: UprightMissing): string => {
    if (name === 'intent') return say('upright.missing.intent');
    return name === 'buttMm' || name === 'tiltDeg' ? say(`actionTerms.field.${name}`) : say(`quantity.${name}.name`);
  };
  return (
    <section className="panel" aria-labelledby="upright-missing">
      <h2 id="upright-missing">{say('upright.missing')}</h2>
      <p className="soft small">{say('upright.missing.why')}</p>
      <ul className="assumed">{names.map((name) => <li key={name}>{nameOf(name)}</li>)}</ul>
    </section>
  );
}
