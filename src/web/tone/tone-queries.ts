import { queryOptions } from '@tanstack/react-query';
import { call } from '../api/client.ts';

const WHILE_WORKING_MS = 1000;

/** The recordings of a piano, all stays. */
export const recordingsQuery = (id: string) =>
  queryOptions({ queryKey: ['piano', id, 'recordings'], queryFn: ({ signal }) => call('listRecordings', { params: { id }, signal }).then(({ recordings }) => recordings) });

/** What was worked out of them, the latest first. */
export const analysesQuery = (id: string) =>
  queryOptions({ queryKey: ['piano', id, 'analyses'], queryFn: ({ signal }) => call('listAnalyses', { params: { id }, signal }).then(({ analyses }) => analyses) });

/** The work in the background on a piano; asked again and again while any is under way. */
export const jobsQuery = (id: string) =>
  queryOptions({
    queryKey: ['piano', id, 'jobs'],
    queryFn: ({ signal }) => call('listJobs', { params: { id }, signal }).then(({ jobs }) => jobs),
    refetchInterval: ({ state }) => (state.data?.some(({ status }) => status === 'waiting' || status === 'running') === true ? WHILE_WORKING_MS : false),
  });
