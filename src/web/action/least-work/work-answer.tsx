import type { LeastWork, NaivePlan } from '#action';
import type { ActionTerms, BenchOperation, BenchSetUp } from '#instrument';
import { partsNeeded, sayParts } from '#workshop';
import { usePiano } from '../../api/piano.tsx';
import { OpenFigure } from '../../figure/figure.tsx';
import { sayRuns } from '../../keys/key-runs.ts';
import { useLocale, useSay } from '../../language/use-say.ts';
import { useSayTime } from './use-say-time.ts';
import { type BehindPlan, planStory } from './work-stories.ts';

interface WorkAnswerProps {
  readonly plan: LeastWork;
  /** By which prices are told; they may still be being typed. */
  readonly terms: ActionTerms | null;
  readonly behind: BehindPlan;
}

/** The time the least work takes, and beside it what plans made without looking take. */
export function WorkAnswer({ plan, terms, behind }: WorkAnswerProps) {
  const say = useSay();
  const timeOf = useSayTime();
  const { already, planned, outOfReach, minutes, replaceAll, leadOnly, partsMinor } = plan;
  const locale = useLocale();
  const partsOf = (minor: number): string | undefined => sayParts(minor, terms, locale);
  const saved = replaceAll.minutes - minutes;
  const savedParts = replaceAll.partsMinor - partsMinor;
  const friction = leadOnly.outside.filter(({ because }) => because === 'friction').length;
  return (
    <section className="panel work-answer" aria-labelledby="work-answer">
      <h2 id="work-answer">{say('leastWork.answer')}</h2>
      <p className="work-total">
        <OpenFigure story={() => planStory(say('leastWork.answer'), 'minutes', behind)}>{timeOf(minutes)}</OpenFigure>
      </p>
      <p><strong>{planned === 0 && outOfReach.length === 0 ? say('leastWork.answer.nothing') : say('leastWork.answer.count', { planned, already, out: outOfReach.length })}</strong></p>
      {plan.proven && planned > 0 && <p className="soft">{say('leastWork.answer.proven')}</p>}
      <div className="table-wrap">
        <table className="figures-table">
          <caption>{say('leastWork.compare')}</caption>
          <thead>
            <tr><th scope="col">{say('leastWork.compare.plan')}</th><th scope="col">{say('leastWork.compare.time')}</th>{partsOf(0) !== undefined && <th scope="col">{say('leastWork.compare.parts')}</th>}<th scope="col">{say('leastWork.compare.outside')}</th></tr>
          </thead>
          <tbody>
            <PlanRow name={say('leastWork.compare.least')} minutes={minutes} parts={partsOf(partsMinor)} outside={outOfReach.length} />
            <PlanRow name={say('leastWork.compare.all')} minutes={replaceAll.minutes} parts={partsOf(replaceAll.partsMinor)} outside={replaceAll.outside.length} />
            <PlanRow name={say('leastWork.compare.lead')} minutes={leadOnly.minutes} parts={partsOf(leadOnly.partsMinor)} outside={leadOnly.outside.length} />
          </tbody>
        </table>
      </div>
      {saved > 0 && <p>{say('leastWork.compare.saved', { time: timeOf(saved) })}{savedParts > 0 && partsOf(savedParts) !== undefined && <> {say('leastWork.compare.savedParts', { parts: partsOf(savedParts) ?? '' })}</>}</p>}
      {leadOnly.outside.length > 0 && <LeadMiss lead={leadOnly} friction={friction} />}
    </section>
  );
}

function PlanRow({ name, minutes, parts, outside }: { readonly name: string; readonly minutes: number; readonly parts: string | undefined; readonly outside: number }) {
  const timeOf = useSayTime();
  return <tr><th scope="row">{name}</th><td>{timeOf(minutes)}</td>{parts !== undefined && <td>{parts}</td>}<td>{outside}</td></tr>;
}

function LeadMiss({ lead: { outside }, friction }: { readonly lead: NaivePlan; readonly friction: number }) {
  const say = useSay();
  const { compass } = usePiano();
  return <p className="soft small">{say('leastWork.compare.leadMiss', { keys: sayRuns(outside.map(({ key }) => key), compass), friction })}</p>;
}

/** The work in the order of the bench: what is set up once, then each stage with its jobs and keys, and the parts to have. */
export function WorkStages({ plan, terms }: Pick<WorkAnswerProps, 'plan' | 'terms'>) {
  const { stages, setups } = plan;
  const say = useSay();
  const timeOf = useSayTime();
  const { compass } = usePiano();
  const locale = useLocale();
  const parts = partsNeeded(plan, say);
  const price = sayParts(plan.partsMinor, terms, locale);
  if (stages.length === 0) return null;
  return (
    <section className="panel">
      <h2>{say('leastWork.stages')}</h2>
      {/* eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls must be reachable by keyboard */}
      <div className="table-wrap" tabIndex={0} role="region" aria-label={say('leastWork.stages')}>
        <table className="figures-table work-stages">
          <thead>
            <tr><th scope="col">{say('leastWork.stages.job')}</th><th scope="col">{say('leastWork.stages.keys')}</th><th scope="col">{say('leastWork.compare.time')}</th></tr>
          </thead>
          {setups.length > 0 && (
            <tbody>
              <StageHead name={say('leastWork.stages.setUps')} time={timeOf(setups.reduce((sum, { minutes }) => sum + minutes, 0))} />
              {setups.map(({ name, minutes, keys }) => (
                <tr key={name}><th scope="row">{say(`actionTerms.setUp.${name as BenchSetUp}`)}</th><td>{keys.length}</td><td>{timeOf(minutes)}</td></tr>
              ))}
            </tbody>
          )}
          {stages.map(({ changes, minutes, operations }) => (
            <tbody key={changes}>
              <StageHead name={say(`leastWork.stage.${changes}`)} time={timeOf(minutes)} />
              {operations.map(({ operation, keys, minutes: own }) => (
                <tr key={operation}>
                  <th scope="row">{say(`actionTerms.operation.${operation as BenchOperation}`)}<span className="soft small work-keys">{sayRuns(keys, compass)}</span></th>
                  <td>{keys.length}</td>
                  <td>{timeOf(own)}</td>
                </tr>
              ))}
            </tbody>
          ))}
        </table>
      </div>
      {parts.length > 0 && <p>{say('leastWork.parts')}: {parts.join(', ')}{price !== undefined && plan.partsMinor > 0 && <>; <strong>{price}</strong></>}</p>}
    </section>
  );
}

function StageHead({ name, time }: { readonly name: string; readonly time: string }) {
  return <tr className="work-stage-head"><th scope="rowgroup" colSpan={2}>{name}</th><td>{time}</td></tr>;
}
