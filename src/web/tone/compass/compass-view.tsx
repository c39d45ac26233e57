import { type KeyNumber, type State, noteNameOf } from '#instrument';
import { toneSignsOf } from '#plot';
import { type StateTone, type StiffnessPair, isComparable, keysStandingOut, standOutsOf, stiffnessFindings } from '#workshop';
import { Suspense, lazy, useMemo, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { KeysWithPlots } from '../../keys/keys-with-plots.tsx';
import { useSay } from '../../language/use-say.ts';
import { useScales } from '../../strings/use-scales.ts';
import type { Trial } from '../../strings/trial.ts';
import { Note } from '../../ui/note.tsx';
import { StateChoice } from '../state-choice.tsx';
import { WhenHeard } from '../when-heard.tsx';
import { TakeOver } from './take-over.tsx';
import { CompassPlots } from './compass-plots.tsx';
import { StandOutList } from './stand-out-list.tsx';
import { StatesCompared } from './states-compared.tsx';
import { StiffnessList } from './stiffness-list.tsx';

const NotePanel = lazy(async () => ({ default: (await import('../note/note-panel.tsx')).NotePanel }));
const noTrial: Trial = {};

/** The compass as it sounds: one plot a property, the states laid over each other, and what to look at. */
export function CompassView() {
  return <WhenHeard>{(tones) => <Compass tones={tones} />}</WhenHeard>;
}

function Compass({ tones }: { readonly tones: readonly StateTone[] }) {
  const say = useSay();
  const { compass } = usePiano();
  const [selected, select] = useState<KeyNumber>();
  const scales = useScales(noTrial);
  const [state, setState] = useState<State>('finished');
  const [first, last] = [tones[0], tones.at(-1)];
  const shown = tones.find((tone) => tone.state === state) ?? last;
  const computedB = useMemo(() => {
    const scale = scales.findLast((one) => one.state === shown?.state) ?? scales[0];
    return new Map(scale?.analysis.notes.flatMap(({ key, figures }) => (figures === undefined ? [] : [[key, figures.inharmonicityB] as const])));
  }, [scales, shown]);
  const findings = useMemo(() => (shown === undefined ? [] : stiffnessFindings(pairsOf(shown, computedB))), [computedB, shown]);
  const standOuts = useMemo(() => (shown === undefined ? undefined : standOutsOf(shown)), [shown]);
  const signs = toneSignsOf(tones.flatMap(({ byKey }) => [...byKey.keys()]), new Set([...findings.map(({ key }) => key), ...(standOuts === undefined ? [] : keysStandingOut(standOuts))]));
  return (
    <>
      {tones.length > 1 && !isComparable(tones) && <Note tone="warn"><p><span aria-hidden="true">▲ </span>{say('tone.notComparable')}</p></Note>}
      <KeysWithPlots
        signs={signs} selected={selected} onKey={select} keysLabel={say('tone.keyboard')} plotsLabel={say('tone.plots')}
        plots={(widthPx) => <CompassPlots tones={tones} computedB={computedB} standOuts={standOuts} widthPx={widthPx} selected={selected} onSelect={select} />}
      >
        {selected === undefined
          ? <p className="soft">{say('tone.chooseKey', { first: noteNameOf(compass, shown?.notes[0]?.key ?? 1) })}</p>
          : <Suspense fallback={<p role="status">{say('shell.loading')}</p>}><NotePanel keyNumber={selected} tones={tones} computedB={computedB.get(selected)} onKey={select} /></Suspense>}
        {shown !== undefined && <StateChoice tones={tones} shown={shown.state} onState={setState} />}
        {shown !== undefined && standOuts !== undefined && <StandOutList tone={shown} standOuts={standOuts} onKey={select} />}
        <StiffnessList findings={findings} hasStrings={computedB.size > 0} onKey={select} />
        {shown !== undefined && <TakeOver tone={shown} />}
        {first !== undefined && last !== undefined && first !== last && <StatesCompared before={first} after={last} />}
      </KeysWithPlots>
    </>
  );
}

function pairsOf({ notes }: StateTone, computedB: ReadonlyMap<KeyNumber, number>): readonly StiffnessPair[] {
  return notes.flatMap(({ key, figures }): readonly StiffnessPair[] => {
    const [heard, computed] = [figures.inharmonicity?.value, computedB.get(key)];
    return heard === undefined || computed === undefined ? [] : [{ key, heardB: heard, computedB: computed, decayS: figures.sustain?.value }];
  });
}
