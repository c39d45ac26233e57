import { quoteFiguresOf } from '#estimate';
import { type Quote, type QuoteAnswer, answerIssues } from '#workshop';
import { type SyntheticEvent, useState } from 'react';
import { useSay } from '../language/use-say.ts';
import { IssueList } from '../shell/issue-list.tsx';
import { ProblemNote } from '../shell/problem-note.tsx';
import { CheckGroup } from '../ui/check-group.tsx';
import { Choice } from '../ui/choice.tsx';
import { DayField } from '../ui/day-field.tsx';
import { Note } from '../ui/note.tsx';
import { useMoney, useQuoting } from './use-worth.ts';

interface AnswerQuoteProps {
  readonly quote: Quote;
  readonly today: string;
  readonly onClose: () => void;
}

/** Notes what the customer said: taken whole or by line, declined, or lapsed. */
export function AnswerQuote({ quote, today, onClose }: AnswerQuoteProps) {
  const say = useSay();
  const money = useMoney(quote.currency);
  const quoting = useQuoting();
  const [on, setOn] = useState(today);
  const [answer, setAnswer] = useState<QuoteAnswer['answer']>('accepted');
  const [taken, setTaken] = useState<readonly string[]>(() => quote.lines.map(({ id }) => id));
  const given: QuoteAnswer = { answer, on, ...(answer === 'accepted' && taken.length < quote.lines.length ? { lines: [...taken] } : {}) };
  const issues = on === '' ? [] : answerIssues(quote, given);
  const isNone = answer === 'accepted' && taken.length === 0;
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    if (on !== '' && !isNone && issues.length === 0) quoting.mutate({ kind: 'answer', id: quote.id, answer: given, onKept: onClose });
  };
  return (
    <form className="worth-form" onSubmit={submit} noValidate>
      <Choice label={say('quote.answer.is')} value={answer} options={(['accepted', 'declined', 'lapsed'] as const).map((value) => ({ value, label: say(`quote.state.${value}`) }))} onChange={setAnswer} />
      {answer === 'accepted' && quote.lines.length > 1 && (
        <CheckGroup label={say('quote.answer.taken')} options={quote.lines.map(({ id, words, amountMinor }) => ({ value: id, label: `${words} (${money(amountMinor)})` }))} chosen={taken} onChange={setTaken}>
          <p aria-live="polite">{say('quote.sum.taken')}: <strong>{money(quoteFiguresOf(quote, taken).totalMinor)}</strong></p>
        </CheckGroup>
      )}
      <DayField label={say('quote.answer.on')} value={on} hint="" onChange={setOn} />
      <Note tone="warn"><p>{say('quote.answer.final')}</p></Note>
      {issues.length > 0 && <Note tone="bad" role="alert"><IssueList issues={issues} /></Note>}
      {quoting.error !== null && <ProblemNote problem={quoting.error} />}
      <div className="row">
        <button type="submit" className="button button-main" disabled={quoting.isPending || on === '' || isNone || issues.length > 0}>{say('quote.answer.note')}</button>
        <button type="button" className="button" onClick={onClose}>{say('action.intent.cancel')}</button>
      </div>
    </form>
  );
}
