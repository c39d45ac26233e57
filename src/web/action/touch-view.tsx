import { type KeyNumber, type State, quantityOf, states } from '#instrument';
import { useMemo, useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useReadingBook } from '../api/use-readings.ts';
import { touchOf } from '../api/use-touch.ts';
import { useSay } from '../language/use-say.ts';
import { Note } from '../ui/note.tsx';
import { useActionCommands } from './action-commands.ts';
import { Asked } from './asked.tsx';
import { ChooseKey } from '../keys/choose-key.tsx';
import { KeyboardAndKey } from './keyboard-and-key.tsx';
import { NothingMeasured } from './nothing-measured.tsx';
import type { StateAnalysis } from './state-analysis.ts';
import { StateSummary } from './state-summary.tsx';

/** What was measured of the touch: what is asked of it, the states compared, and the keys with what is found on them. */
export function TouchView() {
  const say = useSay();
  const { isCurrent } = usePiano();
  const analyses = useAnalyses();
  const [chosen, setChosen] = useState<State>();
  const [key, setKey] = useState<KeyNumber>();
  const [isAsking, setAsking] = useState(false);
  const [isChoosing, setChoosing] = useState(false);
  const shown = analyses.find(({ state }) => state === chosen) ?? analyses[0];
  useActionCommands({
    analysis: shown?.analysis, measured: analyses.map(({ state }) => state), selected: key, canAsk: isCurrent,
    onKey: setKey, onChoose: () => { setChoosing(true); }, onAsk: () => { setAsking(true); }, onState: setChosen,
  });
  return (
    <>
      {shown === undefined && <NothingMeasured />}
      <Asked analysis={shown?.analysis} isAsking={isAsking} onAsking={setAsking} />
      {shown !== undefined && (
        <>
          <StateSummary analyses={analyses} state={shown.state} onState={setChosen} />
          {shown.analysis.caveats.filter((caveat) => caveat !== 'noIntent').map((caveat) => <Note key={caveat}>{say(`caveat.${caveat}`)}</Note>)}
          <KeyboardAndKey analyses={analyses} shown={shown} selected={key} onKey={setKey} />
        </>
      )}
      {isChoosing && <ChooseKey onKey={setKey} onClose={() => { setChoosing(false); }} />}
    </>
  );
}

/** Analyses of the states in which a key was weighed, as found first. */
function useAnalyses(): readonly StateAnalysis[] {
  const piano = usePiano();
  const book = useReadingBook();
  return useMemo(
    () => states.filter((state) => [...book[state].values()].some(({ quantity, scope }) => scope === 'key' && quantityOf(quantity).part === 'touch')).map((state) => ({ state, analysis: touchOf(piano, state, book[state]) })),
    [piano, book],
  );
}
