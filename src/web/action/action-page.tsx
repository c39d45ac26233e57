import type { State, TouchIntent } from '#instrument';
import { states } from '#instrument';
import { useMutation } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { call } from '../api/client.ts';
import { usePiano } from '../api/piano.tsx';
import { refreshPiano } from '../api/queries.ts';
import { useReadingBook } from '../api/use-readings.ts';
import { touchOf } from '../api/use-touch.ts';
import { useSay } from '../language/use-say.ts';
import { KeyboardRow } from '../leaves/keyboard-row.tsx';
import { useWidth } from '../leaves/use-width.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { Note } from '../ui/note.tsx';
import { IntentForm } from './intent-form.tsx';
import { IntentLine } from './intent-line.tsx';
import { KeyPanel, NextList } from './key-panel.tsx';
import { signsOf } from './key-sign.ts';
import { SignLegend } from './sign-legend.tsx';
import { StateSummary } from './state-summary.tsx';
import { TouchPlots } from './touch-plots.tsx';
import type { StateAnalysis } from './touch-series.ts';
import './action.css';

/** Below this width the keys of a whole keyboard are too narrow to point at. */
const LEAST_KEYS_PX = 720;

/** The touch of a piano: the row of keys marked by finding, the figures over the keys, and each key opened. */
export function ActionPage() {
  const say = useSay();
  const { compass, intent } = usePiano();
  const analyses = useAnalyses();
  const [chosen, setChosen] = useState<State>();
  const [key, setKey] = useState<number>();
  const [isAsking, setAsking] = useState(false);
  const [width, ref] = useWidth(960);
  const drawn = Math.max(width, LEAST_KEYS_PX);
  const shown = analyses.find(({ state }) => state === chosen) ?? analyses[0];
  const signs = useMemo(() => (shown === undefined ? new Map<never, never>() : signsOf(shown.analysis)), [shown]);
  const stating = useStateIntent(() => { setAsking(false); });
  if (shown === undefined) return <NothingMeasured />;
  const form = intent === null || isAsking;
  return (
    <div className="page action-page">
      {form ? (
        <IntentForm analysis={shown.analysis} isBusy={stating.isPending} onState={(next) => { stating.mutate(next); }} {...(intent === null ? {} : { onCancel: () => { setAsking(false); } })} />
      ) : (
        <IntentLine intent={intent} onChange={() => { setAsking(true); }} />
      )}
      {stating.error !== null && <ProblemNote problem={stating.error} />}
      <StateSummary analyses={analyses} state={shown.state} onState={setChosen} />
      {shown.analysis.caveats.filter((caveat) => caveat !== 'noIntent').map((caveat) => <Note key={caveat}>{say(`caveat.${caveat}`)}</Note>)}
      <div className="keyboard-and-key">
        <div className="keys-column" ref={ref}>
          <SignLegend signs={signs} />
          <div className="keys-scroll">
            <KeyboardRow compass={compass} signs={signs} widthPx={drawn} keyHeightPx={Math.max(72, Math.round(drawn / 11))} align="plot" label={say('action.keyboard')} selected={key} onSelect={setKey} />
          </div>
        </div>
        <div className="plots-column keys-scroll">
          <TouchPlots analyses={analyses} widthPx={drawn} selected={key} onSelect={setKey} />
        </div>
        <div className="key-column">
          {key === undefined ? (
            <section className="panel">
              <p>{say('action.pick')}</p>
              {shown.analysis.next.length > 0 && <NextList next={shown.analysis.next} />}
            </section>
          ) : (
            <KeyPanel keyNumber={key} analyses={analyses} state={shown.state} onKey={setKey} />
          )}
        </div>
      </div>
    </div>
  );
}

/** Analyses of the states in which a key was weighed, as found first. */
function useAnalyses(): readonly StateAnalysis[] {
  const piano = usePiano();
  const book = useReadingBook();
  return useMemo(
    () => states.filter((state) => [...book[state].values()].some(({ scope }) => scope === 'key')).map((state) => ({ state, analysis: touchOf(piano, state, book[state]) })),
    [piano, book],
  );
}

function useStateIntent(onDone: () => void) {
  const { id, cycle } = usePiano();
  return useMutation({
    mutationFn: (intent: TouchIntent) => call('setIntent', { params: { id, cycle: String(cycle) }, body: intent }),
    onSuccess: async () => {
      await refreshPiano(id);
      onDone();
    },
  });
}

function NothingMeasured() {
  const say = useSay();
  const { id } = usePiano();
  return (
    <div className="page">
      <section className="panel">
        <h2>{say('action.empty.title')}</h2>
        <p>{say('action.empty.text')}</p>
        <p>
          <Link className="button button-main" to="/pianos/$pianoId/readings" params={{ pianoId: id }} search={(search) => search}>{say('action.empty.go')}</Link>
        </p>
      </section>
    </div>
  );
}
