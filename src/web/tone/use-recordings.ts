import { type Job, type WorkedSound, analysisOf } from '#workshop';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect, useMemo } from 'react';
import { usePiano } from '../api/piano.tsx';
import { analysesQuery, jobsQuery, recordingsQuery } from './tone-queries.ts';

/** A recording with what was last worked out of it, and how the work on it stands. */
export interface WorkedRecording extends WorkedSound {
  readonly job: Job | undefined;
}

const isOpen = ({ status }: Job): boolean => status === 'waiting' || status === 'running';

/** The recordings of the stay looked at; undefined while they are on their way. What comes out of work under way shows as it comes. */
export function useRecordings(): readonly WorkedRecording[] | undefined {
  const { id, cycle } = usePiano();
  const client = useQueryClient();
  const { data: recordings } = useQuery(recordingsQuery(id));
  const { data: analyses } = useQuery(analysesQuery(id));
  const { data: jobs } = useQuery(jobsQuery(id));
  const done = jobs?.filter(({ status }) => status === 'done').length ?? 0;
  useEffect(() => { void client.invalidateQueries({ queryKey: ['piano', id, 'analyses'] }); }, [client, id, done]);
  return useMemo(() => {
    if (recordings === undefined || analyses === undefined || jobs === undefined) return undefined;
    return recordings.filter((recording) => recording.cycle === cycle).map((recording) => {
      const mine = jobs.filter(({ recordingId }) => recordingId === recording.id);
      return { recording, analysis: analysisOf(recording, analyses), job: mine.find(isOpen) ?? mine.at(-1) };
    });
  }, [analyses, cycle, jobs, recordings]);
}
