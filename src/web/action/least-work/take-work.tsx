import type { KeyPlan, LeastWork } from '#action';
import { type WorkItemDraft, leastWorkJobs } from '#workshop';
import { usePiano } from '../../api/piano.tsx';
import { useReadings } from '../../api/use-readings.ts';
import { useFigures, useLocale, useSay } from '../../language/use-say.ts';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { useWorkWriting } from '../../work/use-work-writing.ts';
import { missingFrom } from '../../work/work-order.ts';
import { expectedEntriesOf } from './expected-entries.ts';
import { sayChange } from './say-work.ts';

/** Jobs of a plan that do not stand on the list of work yet, and the way to put them there with the readings then expected, as one step. */
export function useTakeWork(plan: LeastWork | undefined): { readonly fresh: readonly WorkItemDraft[]; readonly isBusy: boolean; readonly problem: Error | null; readonly take: () => void } {
  const say = useSay();
  const figure = useFigures();
  const { cycle } = usePiano();
  const locale = useLocale();
  const planned = useReadings('planned');
  const { work, add, isBusy, problem } = useWorkWriting();
  const remarkOf = ({ after }: KeyPlan, done: KeyPlan['work'][number]): string =>
    say('leastWork.take.remark', { change: sayChange(say, figure, done), down: figure(after.downWeightG, 1, 'g'), up: figure(after.upWeightG, 1, 'g') });
  const fresh = plan === undefined ? [] : missingFrom(work, leastWorkJobs(plan, cycle, remarkOf));
  return { fresh, isBusy, problem, take: () => {
    const entries = plan === undefined ? [] : expectedEntriesOf(plan, planned.values(), locale);
    add(fresh, entries.length === 0 ? undefined : { cycle, locale, entries: [...entries] });
  } };
}

interface TakeWorkProps {
  readonly taking: ReturnType<typeof useTakeWork>;
  readonly planned: number;
  /** The answer is that of what is stated, not of what is only typed. */
  readonly isStated: boolean;
}

/** Takes the jobs of the plan onto the list of work. */
export function TakeWork({ taking: { fresh, isBusy, problem, take }, planned, isStated }: TakeWorkProps) {
  const say = useSay();
  if (planned === 0) return null;
  return (
    <section className="panel">
      {fresh.length > 0 && <p><button type="button" className="button button-main" disabled={isBusy || !isStated} onClick={take}>{say('leastWork.take', { count: fresh.length })}</button></p>}
      <p className="soft small">{say(!isStated ? 'leastWork.take.unkept' : fresh.length === 0 ? 'leastWork.take.none' : 'leastWork.take.about')}</p>
      {problem !== null && <ProblemNote problem={problem} />}
    </section>
  );
}
