import type { PaperOutcome } from '#law';
import { useSay } from '../language/use-say.ts';

const SIGNS: Readonly<Record<PaperOutcome, string>> = { prohibited: '✕', papers: '▤', ask: '?', note: '•' };

/** What rules come to, in a word and a sign; nothing of it says that something is allowed. */
export function OutcomeSign({ outcome }: { readonly outcome: PaperOutcome }) {
  const say = useSay();
  return <span className={`papers-outcome papers-outcome-${outcome}`}><span aria-hidden="true">{SIGNS[outcome]} </span>{say(`papers.outcome.${outcome}`)}</span>;
}
