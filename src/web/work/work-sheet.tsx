import { noteNameOf } from '#instrument';
import { isMessageKey } from '#text';
import type { WorkItem } from '#workshop';
import { usePiano } from '../api/piano.tsx';
import { type Say } from '#text';
import { useSay } from '../language/use-say.ts';
import { type WorkGroup, stagesOf } from './work-order.ts';

interface WorkSheetProps {
  readonly work: readonly WorkItem[];
  readonly onStatus: (item: WorkItem, status: WorkItem['status']) => void;
  readonly isReadOnly: boolean;
}

/** The name of a job: a remedy of the catalogue, or the words it was given. */
export function nameOfJob(say: Say, { remedy, remark }: Pick<WorkItem, 'remedy' | 'remark'>): string {
  const key = `remedy.${remedy}`;
  return isMessageKey(key) ? say(key) : remark === '' ? remedy : remark;
}

/** The bench sheet by stage: what to do, how, and on which keys, each to be ticked. */
export function WorkSheet({ work, onStatus, isReadOnly }: WorkSheetProps) {
  const say = useSay();
  return stagesOf(work).map(({ stage, groups }) => {
    const all = groups.flatMap(({ items }) => items);
    return (
      <section key={stage} className="work-stage" aria-label={say(`stage.${String(stage) as '1'}`)}>
        <h2>
          {say(`stage.${String(stage) as '1'}`)} <span className="soft">{say('work.progress', { done: all.filter(({ status }) => status === 'done').length, all: all.length })}</span>
        </h2>
        {groups.map((group) => <Group key={group.remedy} group={group} onStatus={onStatus} isReadOnly={isReadOnly} />)}
      </section>
    );
  });
}

function Group({ group: { remedy, items }, onStatus, isReadOnly }: { readonly group: WorkGroup } & Omit<WorkSheetProps, 'work'>) {
  const say = useSay();
  const how = `remedy.${remedy}.how`;
  const [first] = items;
  return (
    <div className="work-group">
      {remedy !== 'other' && first !== undefined && <h3>{nameOfJob(say, first)}</h3>}
      {isMessageKey(how) && <p className="soft">{say(how)}</p>}
      <ul className="work-items">
        {items.map((item) => <Item key={item.id} item={item} onStatus={onStatus} isReadOnly={isReadOnly} />)}
      </ul>
    </div>
  );
}

function Item({ item, onStatus, isReadOnly }: { readonly item: WorkItem } & Omit<WorkSheetProps, 'work'>) {
  const say = useSay();
  const { compass } = usePiano();
  const { key, cause, status, remedy } = item;
  const causeKey = `cause.${cause ?? ''}`;
  const where = key === null ? say('work.whole') : `${noteNameOf(compass, key)} · ${String(key)}`;
  const what = remedy === 'other' ? nameOfJob(say, item) : isMessageKey(causeKey) ? say(causeKey) : '';
  return (
    <li className="work-item">
      <label>
        <input type="checkbox" checked={status === 'done'} disabled={isReadOnly} onChange={(event) => { onStatus(item, event.target.checked ? 'done' : 'open'); }} />
        <strong>{where}</strong>
        <span className="soft">{what}</span>
      </label>
      {!isReadOnly && status === 'open' && (
        <button type="button" className="button button-quiet no-print" aria-label={say('work.drop.of', { what: `${nameOfJob(say, item)}, ${where}` })} onClick={() => { onStatus(item, 'dropped'); }}>
          {say('work.drop')}
        </button>
      )}
    </li>
  );
}
