import { whoWrote } from '#workshop';
import { useQuery } from '@tanstack/react-query';
import { peopleQuery } from '../api/queries.ts';
import { useSay } from '../language/use-say.ts';

/** Puts the reference an event or a reading carries into words. */
export function useWriter(): (by: string) => string {
  const say = useSay();
  const { data } = useQuery(peopleQuery);
  return (by) => {
    if (data === undefined) return '…';
    const who = whoWrote(by, data);
    return who.kind === 'named' ? who.name : say(`people.${who.kind}`);
  };
}
