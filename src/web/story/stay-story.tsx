import { useSay } from '../language/use-say.ts';
import { SessionList } from './session-list.tsx';
import { StatesTable } from './states-table.tsx';
import { StayJobs } from './stay-jobs.tsx';

/** One stay in the shop: the states side by side, what was done, and how it was weighed. */
export function StayStory() {
  const say = useSay();
  return (
    <>
      <h3>{say('story.states')}</h3>
      <StatesTable />
      <h3>{say('story.jobs')}</h3>
      <StayJobs />
      <h3>{say('story.sessions')}</h3>
      <SessionList />
    </>
  );
}
