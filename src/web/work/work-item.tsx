import { noteNameOf } from '#instrument';
import { isMessageKey } from '#text';
import type { WorkItem } from '#workshop';
import { Link } from '@tanstack/react-router';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { nameOfJob } from './name-of-job.ts';
import { type WeighedStates, stateToWeigh, stillToWeigh } from './remeasure.ts';

interface WorkItemRowProps {
  readonly item: WorkItem;
  /** Standing readings: they tell whether a done job was weighed again. */
  readonly weighed: WeighedStates;
  readonly onStatus: (item: WorkItem, status: WorkItem['status']) => void;
  readonly isReadOnly: boolean;
}

/** One job at one key: to be ticked, dropped or taken up again; done, it asks for the figures that prove it. */
export function WorkItemRow({ item, weighed, onStatus, isReadOnly }: WorkItemRowProps) {
  const say = useSay();
  const { compass } = usePiano();
  const { key, cause, status, remedy, remark } = item;
  const causeKey = `cause.${cause ?? ''}`;
  const where = key === null ? say('work.whole') : noteNameOf(compass, key);
  const what = remedy === 'other' ? nameOfJob(say, item) : [isMessageKey(causeKey) ? say(causeKey) : '', remark].filter((part) => part !== '').join(' · ');
  const named = say('work.drop.of', { what: `${nameOfJob(say, item)}, ${where}` });
  return (
    <li className={`work-item work-${status}`}>
      <label>
        <input type="checkbox" checked={status === 'done'} disabled={isReadOnly || status === 'dropped'} onChange={(event) => { onStatus(item, event.target.checked ? 'done' : 'open'); }} />
        <strong className="work-where">{where}</strong>
        {key !== null && <span className="work-key">{key}</span>}
        <span className="work-what">{what}</span>
      </label>
      {!isReadOnly && status === 'done' && <WeighAgain item={item} weighed={weighed} />}
      {!isReadOnly && status === 'open' && (
        <button type="button" className="button button-quiet no-print" aria-label={named} onClick={() => { onStatus(item, 'dropped'); }}>{say('work.drop')}</button>
      )}
      {!isReadOnly && status === 'dropped' && (
        <button type="button" className="button no-print" aria-label={say('work.restore.of', { what: `${nameOfJob(say, item)}, ${where}` })} onClick={() => { onStatus(item, 'open'); }}>{say('work.restore')}</button>
      )}
    </li>
  );
}

/** Leads to the walk at this key for what is still to be weighed. */
function WeighAgain({ item, weighed }: Pick<WorkItemRowProps, 'item' | 'weighed'>) {
  const say = useSay();
  const { id, compass } = usePiano();
  const quantities = stillToWeigh(item, weighed);
  const { key } = item;
  if (quantities.length === 0 || key === null) return null;
  const what = quantities.map((quantity) => say(`quantity.${quantity}.short`)).join(', ');
  const note = noteNameOf(compass, key);
  const state = stateToWeigh(item);
  return (
    <Link
      className="button work-again no-print"
      to="/pianos/$pianoId/readings"
      params={{ pianoId: id }}
      search={(search) => ({ ...search, state, key, weigh: quantities.join(',') })}
    >
      {say('work.remeasure.go', { what })} <span className="visually-hidden">({note}, {say(`state.${state}`)})</span>
    </Link>
  );
}
