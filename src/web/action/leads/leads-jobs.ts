import { type ActionAbove, type KeyLeadsQuestion, type LeadRemedies, type SolvedKey, keyLeads, leadRemediesOf } from '#action';
import type { Issue } from '#result';

/** One key to be solved, with what may give way instead where its target is out of reach. */
export interface LeadJob {
  readonly question: KeyLeadsQuestion;
  readonly above: ActionAbove;
}

/** What the worker is told. */
export interface LeadsOrder {
  readonly id: number;
  readonly jobs: readonly LeadJob[];
}

/** The leads of one key, and what would reach a target out of reach. */
export interface LeadAnswer extends SolvedKey {
  readonly wouldReach?: LeadRemedies;
}

/** What the worker says: the answer of each key in turn, why one was refused, and the end of all. */
export type LeadsNews = { readonly id: number } & (
  | { readonly type: 'key'; readonly answer: LeadAnswer }
  | { readonly type: 'refused'; readonly issues: readonly Issue[] }
  | { readonly type: 'done' }
);

/** Solves key by key and tells each as soon as it is known. */
export function solveJobs({ id, jobs }: LeadsOrder, onNews: (news: LeadsNews) => void): void {
  for (const { question, above } of jobs) {
    const solved = keyLeads(question);
    if (!solved.ok) {
      onNews({ id, type: 'refused', issues: solved.issues });
      continue;
    }
    const wouldReach = leadRemediesOf(question, solved.value, above);
    onNews({ id, type: 'key', answer: { key: question.key, ...solved.value, ...(wouldReach === undefined ? {} : { wouldReach }) } });
  }
  onNews({ id, type: 'done' });
}
