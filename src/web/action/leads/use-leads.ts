import type { Issue } from '#result';
import { type Thread, type ThreadKind, useThread } from '../../ui/use-thread.ts';
import type { LeadAnswer, LeadJob, LeadsNews } from './leads-jobs.ts';

interface SolvedLeads {
  readonly answers: readonly LeadAnswer[];
  readonly issues: readonly Issue[];
}

const leading: ThreadKind<readonly LeadJob[], LeadsNews, SolvedLeads> = {
  make: () => new Worker(new URL('./leads.worker.ts', import.meta.url), { type: 'module' }),
  nothing: { answers: [], issues: [] },
  heard: (known, news) => (news.type === 'key' ? { ...known, answers: [...known.answers, news.answer] } : { ...known, issues: [...known.issues, ...news.issues] }),
};

/** Solves the keys on a thread of its own. What was solved until it is ended stays. */
export function useLeads(): Thread<readonly LeadJob[], SolvedLeads> {
  return useThread(leading);
}
