import { type TouchAnalysis, askedUpWeightOf } from '#action';
import { type State, noteNameOf, states } from '#instrument';
import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useReadingBook } from '../api/use-readings.ts';
import { useTouch } from '../api/use-touch.ts';
import { sayMaybe, useFigures, useSay } from '../language/use-say.ts';
import { StateMark } from '../leaves/state-mark.tsx';

/** The three states side by side: how much was measured and how even it is. */
export function StatesTable() {
  const say = useSay();
  const { id, intent } = usePiano();
  const book = useReadingBook();
  const found = useTouch('found');
  const touch: Readonly<Record<State, TouchAnalysis>> = { found, planned: useTouch('planned'), finished: useTouch('finished') };
  if (states.every((state) => book[state].size === 0)) {
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
      {intent === null && <p className="soft">{say('story.states.noTarget')}</p>}
      {next?.asked !== undefined && (
        <p>
          <strong>{say('story.states.next')}</strong> {sayMaybe(say, `next.${next.asked}`)}
        </p>
      )}
    </>
  );
}

function Rows({ touch }: { readonly touch: Readonly<Record<State, TouchAnalysis>> }) {
  const say = useSay();
  const figure = useFigures();
  const { compass, intent } = usePiano();
  const rows: readonly (readonly [name: string, cell: (analysis: TouchAnalysis) => ReactNode])[] = [
    [say('story.row.measured'), ({ summary }) => say('story.of', { count: summary.measured, all: summary.keys })],
    ...(intent === null ? [] : [[say('story.row.inside'), ({ summary }: TouchAnalysis) => (summary.judged === 0 ? '–' : say('story.of', { count: summary.inside, all: summary.judged }))] as const]),
    ...(intent === null ? [] : [[say('story.row.guarded'), ({ summary }: TouchAnalysis) => (summary.insideGuarded === undefined ? '–' : say('story.of', { count: summary.insideGuarded, all: summary.judged }))] as const]),
    [say('story.row.outcomes'), ({ summary }) => String(summary.outcomes)],
    [say('story.row.median'), ({ summary }) => (summary.medianG === undefined ? '–' : figure(summary.medianG, 1, 'g'))],
    [say('story.row.step'), ({ summary: { largestStepG, largestStepKeys } }) =>
      largestStepG === undefined ? '–' : `${figure(largestStepG, 1, 'g')}${largestStepKeys === undefined ? '' : ` (${largestStepKeys.map((key) => noteNameOf(compass, key)).join('–')})`}`],
    ...(askedUpWeightOf(intent) === undefined ? [] : [[say('story.row.slow'), ({ summary }: TouchAnalysis) => (summary.measured === 0 ? '–' : String(summary.upWeightLow))] as const]),
    [say('story.row.ratio'), ({ weightRatio }) => (weightRatio.natural.value === undefined ? '–' : figure(weightRatio.natural.value, 2))],
  ];
  return rows.map(([name, cell]) => (
    <tr key={name}>
      <th scope="row">{name}</th>
      {states.map((state) => (
        <td key={state}>{cell(touch[state])}</td>
      ))}
    </tr>
  ));
}
