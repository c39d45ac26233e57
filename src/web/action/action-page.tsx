import { Suspense, useMemo } from 'react';
import { usePiano } from '../api/piano.tsx';
import { type Command, useCommands } from '../commands/registry.ts';
import { useKept } from '../kept/kept.ts';
import { useSay } from '../language/use-say.ts';
import { WhenReadings } from '../shell/when-readings.tsx';
import { Choice } from '../ui/choice.tsx';
import { type ActionViewId, actionViews, viewsOf } from './action-views.ts';
import { ChooseView } from './choose-view.ts';
import './action.css';

/** The action of a piano: what was measured of it, and what is planned from that. */
export function ActionPage() {
  return <WhenReadings><Action /></WhenReadings>;
}

function Action() {
  const say = useSay();
  const { id, instrument: { kind } } = usePiano();
  const views = useMemo(() => viewsOf(kind), [kind]);
  const [chosen, choose] = useKept<ActionViewId>(`wrestplank.action.view.${id}`, 'measured');
  const { id: shown, View } = views.find((view) => view.id === chosen) ?? actionViews[0];
  const commands = useMemo(() => views.map((view): Command => ({ id: `action.view.${view.id}`, label: view.command, group: 'command.group.action', perform: () => { choose(view.id); } })), [choose, views]);
  useCommands(commands);
  return (
    <section className="page action-page" aria-labelledby="action-title">
      <h2 id="action-title" className="visually-hidden">{say('action.title')}</h2>
      <Choice label={say('action.view')} value={shown} options={views.map((view) => ({ value: view.id, label: say(view.label) }))} onChange={choose} />
      <ChooseView value={choose}><Suspense fallback={<p role="status">{say('shell.loading')}</p>}><View /></Suspense></ChooseView>
    </section>
  );
}
