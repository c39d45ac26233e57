import { noteNameOf } from '#instrument';
import type { WorkItem } from '#workshop';
import { usePiano } from '../api/piano.tsx';
import { useMoments, useSay } from '../language/use-say.ts';
import { nameOfJob } from '../work/name-of-job.ts';
import { EventPages } from './event-pages.tsx';
import { Fold } from './fold.tsx';
import { sayQuote, sayQuoteState } from './say-worth.ts';

/** What was quoted and done in a stay; each job opens to what was written about it. */
export function StayJobs() {
  const say = useSay();
  const { work, quotes } = usePiano();
  const of = (status: WorkItem['status']): readonly WorkItem[] => work.filter((item) => item.status === status);
  return (
    <>
      {quotes.length > 0 && <ul className="stay-quotes">{quotes.map((quote) => <li key={quote.id}>{say('story.quote', { what: sayQuote(quote), state: sayQuoteState(quote, say) })}</li>)}</ul>}
      {work.length === 0 && <p className="soft">{say('story.jobs.none')}</p>}
      {(['open', 'done', 'dropped'] as const).map((status) => of(status).length > 0 && (
        <Fold key={status} title={say('story.jobs.count', { status, count: of(status).length })}>
          {of(status).map((item) => <JobFold key={item.id} item={item} />)}
        </Fold>
      ))}
    </>
  );
}

function JobFold({ item }: { readonly item: WorkItem }) {
  const say = useSay();
  const moment = useMoments();
  const { compass } = usePiano();
  const { id, key, doneAt } = item;
  return (
    <Fold title={<>{key === null ? '' : `${noteNameOf(compass, key)} `}{nameOfJob(say, item)}{doneAt !== null && <span className="soft"> · {moment(doneAt)}</span>}</>}>
      <EventPages shown={{ about: `work/${id}` }} />
    </Fold>
  );
}
