import type { Answer } from '#workshop';
import { QueryClient, keepPreviousData, queryOptions } from '@tanstack/react-query';
import { call } from './client.ts';
import { ApiProblem } from './problem.ts';

export type PianoFile = Answer<'getPiano'>;
export type PianoSummary = Answer<'listPianos'>['pianos'][number];

export const queryClient = new QueryClient({
  defaultOptions: {
    queries: {
      staleTime: 30_000,
      retry: (count, error) => count < 3 && !(error instanceof ApiProblem && !error.passing),
    },
  },
});

/** Pianos shown before more are asked for. */
export const PIANOS_SHOWN = 60;

export const pianosQuery = (limit: number, words: string) =>
  queryOptions({ queryKey: ['pianos', limit, words], queryFn: ({ signal }) => call('listPianos', { query: { limit: String(limit), words }, signal }), placeholderData: keepPreviousData });

export const healthQuery = queryOptions({
  queryKey: ['health'],
  queryFn: ({ signal }) => call('health', { signal }),
});

export const peopleQuery = queryOptions({
  queryKey: ['people'],
  queryFn: ({ signal }) => call('listPeople', { signal }).then(({ people }) => people),
});

export const pianoQuery = (id: string) =>
  queryOptions({ queryKey: ['piano', id, 'file'], queryFn: ({ signal }) => call('getPiano', { params: { id }, signal }) });

export const readingsQuery = (id: string, cycle: number) =>
  queryOptions({
    queryKey: ['piano', id, 'readings', cycle],
    queryFn: ({ signal }) => call('listReadings', { params: { id }, query: { cycle: String(cycle) }, signal }).then(({ readings }) => readings),
  });

export const auditQuery = (id: string) =>
  queryOptions({ queryKey: ['piano', id, 'audit'], queryFn: ({ signal }) => call('audit', { params: { id }, signal }), staleTime: 0 });

/** What a written event makes stale: everything of the piano, the list it stands in, and the book of the shop, whose steps are undone the same way. */
export async function refreshPiano(id: string): Promise<void> {
  await Promise.all([
    queryClient.invalidateQueries({ queryKey: ['piano', id] }),
    queryClient.invalidateQueries({ queryKey: ['pianos'] }),
    queryClient.invalidateQueries({ queryKey: ['shop'] }),
  ]);
}
