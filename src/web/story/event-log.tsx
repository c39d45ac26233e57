import type { LogEvent } from '#workshop';
import { useInfiniteQuery } from '@tanstack/react-query';
import { call } from '../api/client.ts';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { EventRow } from './event-row.tsx';

const PAGE = 40;

/** Every event of the piano, the newest first, each with what it changed and the way back. */
export function EventLog() {
  const say = useSay();
  const { id } = usePiano();
  const { data, error, refetch, fetchNextPage, hasNextPage, isFetchingNextPage } = useInfiniteQuery({
    queryKey: ['piano', id, 'events'],
    queryFn: ({ pageParam, signal }) =>
      call('listEvents', { params: { id }, query: { limit: String(PAGE), ...(pageParam === undefined ? {} : { before: String(pageParam) }) }, signal }).then(({ events }) => events),
    initialPageParam: undefined as number | undefined,
    getNextPageParam: (last: readonly LogEvent[]) => (last.length < PAGE ? undefined : last.at(-1)?.seq),
  });
  if (error !== null) return <ProblemNote problem={error} onRetry={() => void refetch()} />;
  if (data === undefined) return <p className="soft">{say('shell.loading')}</p>;
  return (
    <>
      <ol className="event-list" reversed>
        {data.pages.flat().map((event) => (
          <EventRow key={event.seq} event={event} />
        ))}
      </ol>
      {hasNextPage && (
        <button type="button" className="button" disabled={isFetchingNextPage} onClick={() => void fetchNextPage()}>
          {say('story.events.more')}
        </button>
      )}
    </>
  );
}
