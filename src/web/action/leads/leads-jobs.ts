import { type ActionAbove, type KeyLeadsQuestion, type LeadRemedies, type SolvedKey, keyLeads, leadRemediesOf } from '#action';
import type { Issue } from '#result';
import type { ThreadWatch } from '../../ui/thread.ts';

/** One key to be solved, with what may give way instead where its target is out of reach. */
export interface LeadJob {
  readonly question: KeyLeadsQuestion;
  readonly above: ActionAbove;
}

/** The leads of one key, and what would reach a target out of reach. */
export interface LeadAnswer extends SolvedKey {
  readonly wouldReach?: LeadRemedies;
}

/** What the thread says: the answer of each key in turn, or why it was refused. */
export type LeadsNews =
  | { readonly type: 'key'; readonly answer: LeadAnswer }
  | { readonly type: 'refused'; readonly issues: readonly Issue[] };

/** Solves key by key and tells each as soon as it is known; told to stop, it leaves out the rest. */
export async function solveJobs(jobs: readonly LeadJob[], { onNews, shouldStop, pause }: Pick<ThreadWatch<LeadsNews>, 'onNews' | 'shouldStop' | 'pause'>): Promise<void> {
  for (const job of jobs) {
    if (shouldStop()) return;
    onNews(solvedJob(job));
    await pause();
  }
}

function solvedJob({ question, above }: LeadJob): LeadsNews {
  const solved = keyLeads(question);
  if (!solved.ok) return { type: 'refused', issues: solved.issues };
  const wouldReach = leadRemediesOf(question, solved.value, above);
  return { type: 'key', answer: { key: question.key, ...solved.value, ...(wouldReach === undefined ? {} : { wouldReach }) } };
}
