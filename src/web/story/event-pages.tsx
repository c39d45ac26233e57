import type { LogEvent } from '#workshop';
import { keepPreviousData, useInfiniteQuery } from '@tanstack/react-query';
import { call } from '../api/client.ts';
import { usePiano } from '../api/piano.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { EventRow } from './event-row.tsx';

const PAGE = 40;

/** Which events of a piano are shown; nothing stated: all of them. */
export interface EventsShown {
  /** Number of the first and the last one. */
  readonly first?: number;
  readonly last?: number;
  /** Kind of what they changed. */
  readonly what?: string;
  /** The card they are about: `work/<id>`. */
  readonly about?: string;
  readonly words?: string;
}

/** Events of the piano, the newest first, each with what it changed and the way back; page by page. */
export function EventPages({ shown, isCounted = false }: { readonly shown: EventsShown; readonly isCounted?: boolean }) {
  const say = useSay();
  const locale = useLocale();
  const { id } = usePiano();
  const { first, last, ...asked } = shown;
  const query = { ...asked, limit: String(PAGE), locale, ...(first === undefined ? {} : { since: String(first) }) };
  const { data, error, refetch, fetchNextPage, hasNextPage, isFetchingNextPage } = useInfiniteQuery({
    queryKey: ['piano', id, 'events', query, last],
    queryFn: ({ pageParam, signal }) =>
      call('listEvents', { params: { id }, query: { ...query, ...(pageParam === undefined ? {} : { before: String(pageParam) }) }, signal }).then(({ events }) => events),
    initialPageParam: last === undefined ? undefined : last + 1,
    getNextPageParam: (page: readonly LogEvent[]) => (page.length < PAGE ? undefined : page.at(-1)?.seq),
    placeholderData: keepPreviousData,
  });
  if (error !== null) return <ProblemNote problem={error} onRetry={() => void refetch()} />;
  if (data === undefined) return <p className="soft">{say('shell.loading')}</p>;
  const events = data.pages.flat();
  return (
    <>
      {isCounted && <p role="status" className="soft">{say(hasNextPage ? 'story.events.foundSoFar' : 'story.events.found', { count: events.length })}</p>}
      <ol className="event-list" reversed>
        {events.map((event) => (
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
