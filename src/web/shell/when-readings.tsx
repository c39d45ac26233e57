import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { usePiano } from '../api/piano.tsx';
import { readingsQuery } from '../api/queries.ts';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from './problem-note.tsx';

/** Shows what is told of readings once they are there: nothing is called unmeasured that is only on its way. */
export function WhenReadings({ children }: { readonly children: ReactNode }) {
  const say = useSay();
  const { id, cycle } = usePiano();
  const { data: isThere, error, refetch } = useQuery({ ...readingsQuery(id, cycle), select: isFetched });
  if (isThere === true) return children;
  return <section className="page">{error === null ? <p className="soft">{say('shell.loading')}</p> : <ProblemNote problem={error} onRetry={() => void refetch()} />}</section>;
}

const isFetched = (): boolean => true;
