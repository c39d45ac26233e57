import { type KeyLeads, type KeyLeadsProblem, type LeadWay, leadWaysOf } from '#action';
import { serveOrders } from '../../ui/thread.ts';

/** A key that is solved, to be led otherwise. */
export interface WaysOrder {
  readonly question: KeyLeadsProblem;
  readonly answer: KeyLeads;
}

serveOrders<WaysOrder, readonly LeadWay[]>(({ question, answer }, { onNews }) => {
  onNews(leadWaysOf(question, answer));
  return Promise.resolve();
});
