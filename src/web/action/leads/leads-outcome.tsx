import { type KeyboardLeads, keyboardOf } from '#action';
import type { KeyNumber } from '#instrument';
import type { LeadedKey } from '#workshop';
import { useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { sayRuns } from '../../keys/key-runs.ts';
import { useFigures, useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';
import { inGPerCm3 } from '../terms/densities.ts';
import { InertiaWords } from './inertia-words.tsx';
import type { LeadAnswer } from './leads-jobs.ts';

interface LeadsOutcomeProps {
  readonly keys: readonly LeadedKey[];
  readonly answers: readonly LeadAnswer[];
  readonly of: number;
  readonly wasStopped: boolean;
  readonly isOld: boolean;
  readonly isKept: boolean;
  readonly canWrite: boolean;
  readonly onKeep: () => void;
}

/** What came of it, in words: how many keys are met and proven, what is to be bought, drilled and plugged, and keeping it. */
export function LeadsOutcome({ keys, answers, of, wasStopped, isOld, isKept, canWrite, onKeep }: LeadsOutcomeProps) {
  const say = useSay();
  const { compass } = usePiano();
  const whole = useMemo(() => keyboardOf(answers, questionsOf(keys, answers)), [keys, answers]);
  return (
    <section className="panel" aria-labelledby="leads-result">
      <h2 id="leads-result">{say('leads.result')}</h2>
      {isOld && <Note tone="warn">{say('leads.result.old')}</Note>}
      {wasStopped && <Note tone="warn">{say('leads.result.stopped', { count: answers.length, of })}</Note>}
      <p><strong>{say('leads.result.count', { met: whole.feasible, count: answers.length })}</strong>; {say('leads.result.proven', { proven: whole.proven, count: answers.length })}.</p>
      <p>{say('leads.result.work', { leads: whole.leads, holes: whole.newHoles, plugs: whole.plugs })}</p>
      {whole.missed.length > 0 && <p>{say('leads.result.missed')}: {sayRuns(whole.missed, compass)}</p>}
      <SizesTable sizes={whole.sizes} />
      <InertiaWords keys={keys} answers={answers} />
      {canWrite && (
        <div className="row">
          <button type="button" className="button button-main" disabled={whole.feasible === 0 || isOld} onClick={onKeep}>{say('leads.keep', { count: whole.feasible })}</button>
          {whole.missed.length > 0 && <span className="soft small">{say('leads.keep.note')}</span>}
        </div>
      )}
      <p role="status">{isKept && say('leads.kept')}</p>
    </section>
  );
}

/** The questions behind the answers, in their order. */
function questionsOf(keys: readonly LeadedKey[], answers: readonly LeadAnswer[]): readonly LeadedKey['question'][] {
  const byKey = new Map<KeyNumber, LeadedKey['question']>(keys.map(({ key, question }) => [key, question]));
  return answers.flatMap(({ key }) => byKey.get(key) ?? []);
}

function SizesTable({ sizes }: Pick<KeyboardLeads, 'sizes'>) {
  const say = useSay();
  const figure = useFigures();
  return (
    <div className="table-wrap">
      <table className="figures-table">
        <caption>{say('leads.buy')}</caption>
        <thead><tr>{(['diameter', 'refilled', 'drilled', 'plugged', 'metal'] as const).map((column) => <th key={column} scope="col">{say(`leads.column.${column}`)}</th>)}</tr></thead>
        <tbody>
          {sizes.map(({ diameterMm, densityGPerMm3, refilled, drilled, plugged, metalG }) => (
            <tr key={`${String(diameterMm)} ${String(densityGPerMm3)}`}><th scope="row">{figure(diameterMm, 1, 'mm')}{densityGPerMm3 !== undefined && <> <span className="soft small">{figure(inGPerCm3(densityGPerMm3), 2, 'gcm3')}</span></>}</th><td>{refilled}</td><td>{drilled}</td><td>{plugged}</td><td>{figure(metalG, 0, 'g')}</td></tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
