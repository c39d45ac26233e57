import { type TouchAnalysis, askedUpWeightOf } from '#action';
import { type State, noteNameOf, states } from '#instrument';
import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { sectionRatioStory } from '../action/stories.ts';
import { useEvenness } from '../action/use-evenness.tsx';
import { usePiano } from '../api/piano.tsx';
import { useReadingBook, useReadings } from '../api/use-readings.ts';
import { Figure } from '../figure/figure.tsx';
import { useTouch } from '../api/use-touch.ts';
import { sayMaybe, useSay } from '../language/use-say.ts';
import { StateMark } from '../leaves/state-mark.tsx';

/** The three states side by side: how much was measured and how even it is. */
export function StatesTable() {
  const say = useSay();
  const { id, intent, isCurrent } = usePiano();
  const book = useReadingBook();
  const found = useTouch('found');
  const touch: Readonly<Record<State, TouchAnalysis>> = { found, planned: useTouch('planned'), finished: useTouch('finished') };
  if (states.every((state) => book[state].size === 0)) {
    if (!isCurrent) return <p className="soft">{say('story.states.none')}</p>;
    return (
      <>
        <p>{say('story.states.empty')}</p>
        <p>
          <Link className="button button-main" to="/pianos/$pianoId/readings" params={{ pianoId: id }}>
            {say('story.states.begin')}
          </Link>
        </p>
      </>
    );
  }
  const next = [...states].reverse().map((state) => ({ state, asked: touch[state].next[0] })).find(({ state, asked }) => book[state].size > 0 && asked !== undefined);
  return (
    <>
      {/* eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls must be reachable by keyboard */}
      <div className="scroll-x" role="group" aria-label={say('story.states.table')} tabIndex={0}>
        <table className="states-table">
          <thead>
            <tr>
              <td />
              {states.map((state) => (
                <th key={state} scope="col">
                  <StateMark state={state} />
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            <Rows touch={touch} />
          </tbody>
        </table>
      </div>
      {isCurrent && intent === null && <p className="soft">{say('story.states.noTarget')}</p>}
      {isCurrent && next?.asked !== undefined && (
        <p>
          <strong>{say('story.states.next')}</strong> {sayMaybe(say, `next.${next.asked}`)}
        </p>
      )}
    </>
  );
}

function Rows({ touch }: { readonly touch: Readonly<Record<State, TouchAnalysis>> }) {
  const say = useSay();
  const { compass, intent } = usePiano();
  const shown = { found: useShown('found', touch.found), planned: useShown('planned', touch.planned), finished: useShown('finished', touch.finished) };
  const rows: readonly (readonly [name: string, cell: (state: State, analysis: TouchAnalysis) => ReactNode])[] = [
    [say('story.row.measured'), (_, { summary }) => say('story.of', { count: summary.measured, all: summary.keys })],
    ...(intent === null ? [] : [[say('story.row.inside'), (state: State, { summary }: TouchAnalysis) => (summary.judged === 0 ? '–' : <>{shown[state].even(say('story.row.inside'), 'inside', summary.inside, 0, false)} {say('story.ofAll', { all: summary.judged })}</>)] as const]),
    ...(intent === null ? [] : [[say('story.row.guarded'), (state: State, { summary }: TouchAnalysis) => (summary.insideGuarded === undefined ? '–' : <>{shown[state].even(say('story.row.guarded'), 'insideGuarded', summary.insideGuarded, 0, false)} {say('story.ofAll', { all: summary.judged })}</>)] as const]),
    [say('story.row.outcomes'), (_, { summary }) => String(summary.outcomes)],
    [say('story.row.median'), (state, { summary }) => (summary.medianG === undefined ? '–' : shown[state].even(say('story.row.median'), 'median', summary.medianG, 1, true))],
    [say('story.row.step'), (state, { summary: { largestStepG, largestStepKeys } }) =>
      largestStepG === undefined ? '–' : <>{shown[state].even(say('story.row.step'), 'largestStep', largestStepG, 1, true)}{largestStepKeys === undefined ? '' : ` (${largestStepKeys.map((key) => noteNameOf(compass, key)).join('–')})`}</>],
    ...(askedUpWeightOf(intent) === undefined ? [] : [[say('story.row.slow'), (_: State, { summary }: TouchAnalysis) => (summary.measured === 0 ? '–' : String(summary.upWeightLow))] as const]),
    [say('story.row.ratio'), (state, { weightRatio }) => (weightRatio.natural.value === undefined ? '–' : shown[state].ratio(say('story.row.ratio'), weightRatio.natural.value))],
  ];
  return rows.map(([name, cell]) => (
    <tr key={name}>
      <th scope="row">{name}</th>
      {states.map((state) => (
        <td key={state}>{cell(state, touch[state])}</td>
      ))}
    </tr>
  ));
}

/** How the figures of one state are shown: each opens to how it was made. */
function useShown(state: State, analysis: TouchAnalysis) {
  const even = useEvenness(state, analysis);
  const readings = useReadings(state);
  return {
    even,
    ratio: (title: string, value: number): ReactNode => <Figure value={value} decimals={2} story={() => sectionRatioStory(title, analysis, 'natural', [...readings.values()])} />,
  };
}
