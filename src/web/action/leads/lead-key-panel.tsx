import { leadBreakPointOf } from '#action';
import type { Reading } from '#instrument';
import type { LeadedKey } from '#workshop';
import { usePiano } from '../../api/piano.tsx';
import { Figure } from '../../figure/figure.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';
import { KeyPanelFrame } from '../../keys/key-panel-frame.tsx';
import { inGPerCm3 } from '../terms/densities.ts';
import { inertiaChangeOf } from './inertia.ts';
import { KeyStripView, holesOf } from './key-strip-view.tsx';
import { leadsStory } from './lead-stories.ts';
import type { LeadAnswer } from './leads-jobs.ts';
import { OtherWays } from './other-ways.tsx';
import { OutOfReach } from './out-of-reach.tsx';

interface LeadKeyPanelProps {
  readonly keyNumber: number;
  readonly leaded: LeadedKey | undefined;
  readonly answer: LeadAnswer | undefined;
  readonly readings: readonly Reading[];
  readonly onKey: (key: number) => void;
}

/** One key: its leads drawn to scale, front weight before and after, what it does to the inertia, and what would reach a target out of reach. */
export function LeadKeyPanel({ keyNumber, leaded, answer, readings, onKey }: LeadKeyPanelProps) {
  const say = useSay();
  return (
    <KeyPanelFrame keyNumber={keyNumber} onKey={onKey}>
      {leaded === undefined || answer === undefined ? <p>{say('leads.key.none')}</p> : <Solved leaded={leaded} answer={answer} readings={readings} />}
    </KeyPanelFrame>
  );
}

interface SolvedProps {
  readonly leaded: LeadedKey;
  readonly answer: LeadAnswer;
  readonly readings: readonly Reading[];
}

function Solved({ leaded, answer, readings }: SolvedProps) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const { question, measuredFrontWeightG } = leaded;
  const inertia = inertiaChangeOf(leaded, answer);
  const what = say('quantity.frontWeightG.name');
  const moved = finishOf(answer);
  return (
    <>
      <KeyStripView leaded={leaded} answer={answer} />
      <p>
        {say('leads.key.after')} <Figure value={answer.frontWeightG} decimals={2} unit="g" story={() => leadsStory(what, 'frontWeightG', leaded, { compass, readings })} />{' '}
        {say('leads.key.front', { before: figure(measuredFrontWeightG, 1, 'g'), target: figure(question.targetFrontWeightG, 2, 'g'), tolerance: figure(question.toleranceG, 2, 'g') })}
      </p>
      {answer.feasible && <p><strong>{answer.proven ? say('leads.key.proven') : say('leads.key.notProven')}</strong></p>}
      {!answer.feasible && <OutOfReach answer={answer} targetG={question.targetFrontWeightG} />}
      <HolesTable leaded={leaded} answer={answer} />
      <OtherWays leaded={leaded} answer={answer} />
      {moved !== undefined && <p className="soft small">{say('leads.key.finish', { from: figure(moved.fromMm, 0, 'mm'), to: figure(moved.toMm, 2, 'mm'), weight: figure(moved.weightG, 2, 'g') })}</p>}
      <p className="soft small">
        {say('leads.inertia.key', { before: figure(inertia.beforeG, 1, 'g'), after: figure(inertia.afterG, 1, 'g') })}
        {inertia.wholeBeforeG !== undefined && inertia.wholeAfterG !== undefined && <> {say('leads.inertia.whole', { before: figure(inertia.wholeBeforeG, 0, 'g'), after: figure(inertia.wholeAfterG, 0, 'g'), change: figure((100 * (inertia.wholeAfterG - inertia.wholeBeforeG)) / inertia.wholeBeforeG, 1, 'pct', true) })}</>}
      </p>
    </>
  );
}

/** The new hole that is moved so that the target is met exactly. */
function finishOf({ leads, finish }: LeadAnswer): { readonly fromMm: number; readonly toMm: number; readonly weightG: number } | undefined {
  const place = finish?.leads.findIndex((lead, index) => lead.positionMm !== leads[index]?.positionMm) ?? -1;
  const [from, to] = [leads[place], finish?.leads[place]];
  return from === undefined || to === undefined || finish === undefined ? undefined : { fromMm: from.positionMm, toMm: to.positionMm, weightG: finish.frontWeightG };
}

function HolesTable({ leaded, answer }: Pick<SolvedProps, 'leaded' | 'answer'>) {
  const say = useSay();
  const figure = useFigures();
  const holes = holesOf(answer, leaded);
  if (holes.length === 0) return <p className="soft">{say('leads.key.noLeads')}</p>;
  const none = <span className="soft">–</span>;
  return (
    // eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls must be reachable by keyboard
    <div className="table-wrap" tabIndex={0} role="region" aria-label={say('leads.key.holes')}>
      <table className="figures-table">
        <caption className="visually-hidden">{say('leads.key.holes')}</caption>
        <thead><tr>{(['use', 'position', 'diameter', 'mass', 'break'] as const).map((column) => <th key={column} scope="col">{say(`leads.column.${column}`)}</th>)}</tr></thead>
        <tbody>
          {holes.map((hole) => {
            const breakAt = hole.use === 'plug' ? undefined : leadBreakPointOf(hole, leaded.question.keyFrontMm);
            return (
              <tr key={`${hole.use} ${String(hole.positionMm)}`}>
                <th scope="row">{say(`leads.use.${hole.use}.long`)}</th>
                <td>{figure(hole.positionMm, 1, 'mm')}</td>
                <td>{figure(hole.diameterMm, 1, 'mm')}{hole.boreMm !== undefined && <> {say('leads.bored', { bore: figure(hole.boreMm, 1, 'mm') })}</>}{hole.densityGPerMm3 !== undefined && <> <span className="soft small">{figure(inGPerCm3(hole.densityGPerMm3), 2, 'gcm3')}</span></>}</td>
                <td>{hole.netMassG === undefined ? none : figure(hole.netMassG, 1, 'g')}</td>
                <td>{breakAt === undefined ? none : `${figure(breakAt, 1)} m/s²`}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <p className="soft small">{say('leads.break.about')}</p>
    </div>
  );
}
