import { type LeadCounts, type LeadWay, leadCountsOf } from '#action';
import type { LeadedKey } from '#workshop';
import { useEffect } from 'react';
import { useFigures, useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';
import { type ThreadKind, useThread } from '../../ui/use-thread.ts';
import type { WaysOrder } from './lead-ways.worker.ts';
import type { LeadAnswer } from './leads-jobs.ts';

const comparing: ThreadKind<WaysOrder, readonly LeadWay[], readonly LeadWay[]> = {
  make: () => new Worker(new URL('./lead-ways.worker.ts', import.meta.url), { type: 'module' }),
  nothing: [],
  heard: (_, ways) => ways,
};

/** The answer of one key beside other ways to lead it: pieces, work, inertia and what each counts as, worked out beside the page. */
export function OtherWays({ leaded: { question }, answer }: { readonly leaded: LeadedKey; readonly answer: LeadAnswer }) {
  const say = useSay();
  const figure = useFigures();
  const { state: { known: ways, isRunning, hasFailed, order }, start } = useThread(comparing);
  useEffect(() => { start({ question, answer }); }, [question, answer, start]);
  if (hasFailed) return <Note tone="bad">{say('leads.failed')}</Note>;
  const hasInserts = (question.otherInserts ?? []).length > 0;
  const row = (name: string, counts: LeadCounts, { frontWeightG, costG, missG, mark }: { readonly frontWeightG: number; readonly costG: number; readonly missG: number; readonly mark: boolean }) => (
    <tr key={name} className={mark ? 'field-rows-strong' : undefined}>
      <th scope="row">{name}</th>
      {[counts.pieces, counts.drilled, counts.trimmed, ...(hasInserts ? [counts.exchanged] : []), counts.plugged].map((count, column) => <td key={column}>{count}</td>)}
      <td>{figure(frontWeightG, 2, 'g')}{missG > 0 && <> <span className="soft small">{say('leads.ways.miss', { miss: figure(missG, 2, 'g') })}</span></>}</td>
      <td>{figure(counts.inertiaG, 1, 'g')}</td>
      <td>{figure(costG, 1, 'g')}</td>
    </tr>
  );
  return (
    // eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls must be reachable by keyboard
    <div className="table-wrap" tabIndex={0} role="region" aria-label={say('leads.ways')}>
      <table className="figures-table">
        <caption>{say('leads.ways')}</caption>
        <thead><tr>{(['way', 'pieces', 'drilled', 'trimmed', 'exchanged', 'plugged', 'front', 'inertia', 'cost'] as const).filter((column) => column !== 'exchanged' || hasInserts).map((column) => <th key={column} scope="col">{say(`leads.ways.${column}`)}</th>)}</tr></thead>
        <tbody>
          {row(say('leads.ways.answer'), leadCountsOf(answer.leads, question), { frontWeightG: answer.frontWeightG, costG: answer.costG, missG: answer.missG ?? 0, mark: true })}
          {order?.answer === answer && ways.map((way) => row(say(`leads.way.${way.way}`), way, { ...way, mark: false }))}
        </tbody>
      </table>
      <p className="soft small" aria-live="polite">{isRunning ? say('leads.ways.busy') : say('leads.ways.about')}</p>
    </div>
  );
}
