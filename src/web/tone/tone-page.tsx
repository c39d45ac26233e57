import { Suspense, useMemo } from 'react';
import { usePiano } from '../api/piano.tsx';
import { type Command, useCommands } from '../commands/registry.ts';
import { useKept } from '../kept/kept.ts';
import { useSay } from '../language/use-say.ts';
import { WhenReadings } from '../shell/when-readings.tsx';
import { Choice } from '../ui/choice.tsx';
import { type ToneViewId, toneViews } from './tone-views.ts';
import './tone.css';

/** How a piano sounds: its recordings, and what was measured from them. */
export function TonePage() {
  return <WhenReadings><Tone /></WhenReadings>;
}

function Tone() {
  const say = useSay();
  const { id } = usePiano();
  const [chosen, choose] = useKept<ToneViewId>(`wrestplank.tone.view.${id}`, 'recordings');
  const { id: shown, View } = toneViews.find((view) => view.id === chosen) ?? toneViews[0];
  const commands = useMemo(() => toneViews.map((view): Command => ({ id: `tone.view.${view.id}`, label: view.command, group: 'command.group.tone', perform: () => { choose(view.id); } })), [choose]);
  useCommands(commands);
  return (
    <section className="page tone-page" aria-labelledby="tone-title">
      <h2 id="tone-title" className="visually-hidden">{say('tone.title')}</h2>
      <Choice label={say('tone.view')} value={shown} options={toneViews.map((view) => ({ value: view.id, label: say(view.label) }))} onChange={choose} />
      <Suspense fallback={<p role="status">{say('shell.loading')}</p>}><View /></Suspense>
    </section>
  );
}
