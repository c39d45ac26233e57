import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { auditQuery } from '../api/queries.ts';
import { sayProblem } from '../api/say-problem.ts';
import { useSay } from '../language/use-say.ts';

/** Reads the whole chain of events again and says whether anything in it was altered. */
export function AuditCheck() {
  const say = useSay();
  const { id } = usePiano();
  const [asked, setAsked] = useState(false);
  const { data, error, isFetching, refetch } = useQuery({ ...auditQuery(id), enabled: asked });
  const text =
    !asked ? ''
    : isFetching ? say('shell.loading')
    : error !== null ? sayProblem(error, say)
    : data === undefined ? ''
    : data.whole ? say('story.audit.whole', { events: data.events, hash: data.headHash.slice(0, 12) })
    : say('story.audit.broken', { seq: data.firstBrokenSeq ?? 0 });
  return (
    <>
      <button type="button" className="button no-print" onClick={() => { if (asked) void refetch(); else setAsked(true); }}>
        {say('story.audit')}
      </button>
      <span role="status" className={data?.whole === false ? 'audit-broken' : 'soft small'}>
        {text}
      </span>
    </>
  );
}
