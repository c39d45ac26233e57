import type { WorkItem } from '#workshop';
import { useSay } from '../language/use-say.ts';
import { nameOfJob } from './name-of-job.ts';
import type { WeighedStates } from './remeasure.ts';
import { WorkItemRow } from './work-item.tsx';
import { type WorkGroup, stagesOf } from './work-order.ts';

interface WorkSheetProps {
  readonly work: readonly WorkItem[];
  readonly weighed: WeighedStates;
  readonly onStatus: (item: WorkItem, status: WorkItem['status']) => void;
  readonly isReadOnly: boolean;
}

/** The bench sheet by stage: what to do, how, and on which keys, each to be ticked. */
export function WorkSheet({ work, ...rest }: WorkSheetProps) {
  const say = useSay();
  return stagesOf(work).map(({ stage, groups }) => {
    const all = groups.flatMap(({ items }) => items);
    const id = `stage-${String(stage)}`;
    return (
      <section key={stage} className="work-stage" aria-labelledby={id}>
        <h2 id={id}>
          {say(`stage.${String(stage) as '1'}`)} <span className="soft">{say('work.progress', { done: all.filter(({ status }) => status === 'done').length, all: all.length })}</span>
        </h2>
        {groups.map((group) => <Group key={group.remedy} group={group} {...rest} />)}
      </section>
    );
  });
}

function Group({ group: { remedy, items }, ...rest }: { readonly group: WorkGroup } & Omit<WorkSheetProps, 'work'>) {
  const say = useSay();
  const how = `remedy.${remedy}.how`;
  const [first] = items;
  return (
    <div className="work-group">
      {remedy !== 'other' && first !== undefined && <h3>{nameOfJob(say, first)}</h3>}
      {say.knows(how) && <p className="soft">{say(how)}</p>}
      <ul className="work-items">
        {items.map((item) => <WorkItemRow key={item.id} item={item} {...rest} />)}
      </ul>
    </div>
  );
}
