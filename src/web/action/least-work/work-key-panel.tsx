import type { KeyPlan, KeyTouch, LeastWork, WorkDone } from '#action';
import { type BenchOperation, type KeyNumber, noteNameOf } from '#instrument';
import type { GatheredWork } from '#workshop';
import { usePiano } from '../../api/piano.tsx';
import { Figure } from '../../figure/figure.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import { KeyPanelFrame } from '../../keys/key-panel-frame.tsx';
import { sayChange } from './say-work.ts';
import { useSayTime } from './use-say-time.ts';
import { type BehindPlan, canOpenKey, keyStory } from './work-stories.ts';

interface WorkKeyPanelProps {
  readonly keyNumber: KeyNumber;
  readonly plan: LeastWork;
  readonly behind: BehindPlan;
  readonly left: GatheredWork['left'];
  readonly onKey: (key: KeyNumber) => void;
}

/** One key: what to do and by how much, its touch as found and as expected, or by how much it is out of reach and what would reach it. */
export function WorkKeyPanel({ keyNumber, plan, behind, left, onKey }: WorkKeyPanelProps) {
  const say = useSay();
  const figure = useFigures();
  const timeOf = useSayTime();
  const own = plan.keys.find(({ key }) => key === keyNumber);
  const why = left.find(({ keys }) => keys.includes(keyNumber))?.why;
  const touch = behind.touch.keys.find(({ key }) => key === keyNumber);
  return (
    <KeyPanelFrame keyNumber={keyNumber} onKey={onKey}>
      {why !== undefined && <p>{say(`leastWork.key.left.${why}`)}</p>}
      {own !== undefined && <p><strong>{own.verdict === 'already' ? say('leastWork.key.already') : own.verdict === 'planned' ? say('leastWork.key.planned', { time: timeOf(own.minutes) }) : say('leastWork.key.outOfReach', { miss: figure(own.outOfReach?.missG ?? 0, 1, 'g') })}</strong></p>}
      {own !== undefined && own.work.length > 0 && <WorkList title={say('leastWork.key.work')} work={own.work} />}
      {own?.outOfReach !== undefined && <Reaching outOfReach={own.outOfReach} />}
      {own !== undefined && touch !== undefined && <TouchTable own={own} touch={touch} plan={plan} behind={behind} />}
    </KeyPanelFrame>
  );
}

function WorkList({ title, work }: { readonly title: string; readonly work: readonly WorkDone[] }) {
  const say = useSay();
  const figure = useFigures();
  const timeOf = useSayTime();
  return (
    <>
      <h3>{title}</h3>
      <ol className="turns">
        {work.map((done) => <li key={done.operation}>{say(`actionTerms.operation.${done.operation as BenchOperation}`)}: <strong>{sayChange(say, figure, done)}</strong> <span className="soft small">{timeOf(done.minutes)}</span></li>)}
      </ol>
    </>
  );
}

function Reaching({ outOfReach: { nearest, wouldReach } }: { readonly outOfReach: NonNullable<KeyPlan['outOfReach']> }) {
  const say = useSay();
  const figure = useFigures();
  return (
    <>
      {nearest.length === 0 ? <p className="soft">{say('leastWork.key.nothingNear')}</p> : <WorkList title={say('leastWork.key.nearest')} work={nearest} />}
      <h3>{say('leastWork.key.would')}</h3>
      {wouldReach.length === 0 && <p className="soft">{say('leastWork.key.would.none')}</p>}
      <ul className="turns">
        {wouldReach.map((one) => <li key={one.changes}><strong>{sayChange(say, figure, one)}</strong>, {say(one.alone ? 'leastWork.key.would.alone' : 'leastWork.key.would.further')}</li>)}
      </ul>
    </>
  );
}

const ROWS = [
  ['downWeightG', 'quantity.downWeightG.short', 1], ['upWeightG', 'quantity.upWeightG.short', 1], ['balanceWeightG', 'touch.balanceWeight', 1], ['frictionG', 'touch.friction', 1],
  ['frontWeightG', 'quantity.frontWeightG.short', 1], ['hammerWeightG', 'quantity.hammerWeightG.short', 2], ['weightRatio', 'touch.weightRatio', 2],
] as const;

interface TouchTableProps {
  readonly own: KeyPlan;
  readonly touch: KeyTouch;
  readonly plan: LeastWork;
  readonly behind: BehindPlan;
}

function TouchTable({ own, touch, plan, behind }: TouchTableProps) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const note = noteNameOf(compass, touch.key);
  const after = own.outOfReach?.after ?? own.after;
  const found: Readonly<Record<(typeof ROWS)[number][0], number | undefined>> = {
    downWeightG: touch.figures.downWeightG?.value, upWeightG: touch.figures.upWeightG?.value, balanceWeightG: touch.balanceWeightG, frictionG: touch.frictionG,
    frontWeightG: touch.figures.frontWeightG?.value, hammerWeightG: touch.figures.hammerWeightG?.value, weightRatio: touch.weightRatio,
  };
  const story = canOpenKey(own, plan, behind.problem) ? keyStory(`${say('leastWork.title')}, ${note}`, touch.key, plan, behind) : undefined;
  const shown = (value: number | undefined, decimals: number, unit: 'g' | undefined) => (value === undefined ? <span className="soft">–</span> : story === undefined ? figure(value, decimals, unit) : <Figure value={value} decimals={decimals} {...(unit === undefined ? {} : { unit })} story={() => story} />);
  return (
    <div className="table-wrap">
      <table className="figures-table">
        <caption className="visually-hidden">{say('leastWork.key.figures', { note })}</caption>
        <thead>
          <tr>
            <th scope="col"><span className="visually-hidden">{say('action.figure')}</span></th>
            <th scope="col"><StateMark state="found" /></th>
            <th scope="col">{own.outOfReach === undefined ? say('leastWork.expected') : say('leastWork.key.nearest')}</th>
          </tr>
        </thead>
        <tbody>
          {ROWS.filter(([name]) => found[name] !== undefined).map(([name, label, decimals]) => {
            const unit = name === 'weightRatio' ? undefined : 'g';
            return (
              <tr key={name}>
                <th scope="row">{say(label)}</th>
                <td>{figure(found[name] ?? 0, decimals, unit)}</td>
                <td>{shown(after[name], decimals, unit)}</td>
              </tr>
            );
          })}
          <tr>
            <th scope="row">{say('leastWork.key.margin')}</th>
            <td />
            <td>{shown(own.outOfReach === undefined ? own.marginG : 0 - own.outOfReach.missG, 1, 'g')}</td>
          </tr>
        </tbody>
      </table>
    </div>
  );
}
