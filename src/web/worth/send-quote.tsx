import { type Quote, sendIssues } from '#workshop';
import { type SyntheticEvent, useState } from 'react';
import { useLocale, useSay } from '../language/use-say.ts';
import { IssueList } from '../shell/issue-list.tsx';
import { ProblemNote } from '../shell/problem-note.tsx';
import { errorAt } from '../terms/error-at.ts';
import { DayField } from '../ui/day-field.tsx';
import { Note } from '../ui/note.tsx';
import { useQuoting } from './use-worth.ts';

interface SendQuoteProps {
  readonly quote: Quote;
  readonly today: string;
  readonly onClose: () => void;
}

/** Marks a quote as sent on a day, having said that it stands for good. */
export function SendQuote({ quote, today, onClose }: SendQuoteProps) {
  const say = useSay();
  const locale = useLocale();
  const quoting = useQuoting();
  const [on, setOn] = useState(today);
  const issues = on === '' ? [] : sendIssues(quote, on);
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    if (on !== '' && issues.length === 0) quoting.mutate({ kind: 'send', id: quote.id, on, onKept: onClose });
  };
  return (
    <form className="worth-form" onSubmit={submit} noValidate>
      <Note tone="warn"><p>{say('quote.send.final')}</p></Note>
      <DayField label={say('quote.send.on')} value={on} hint={errorAt(issues, 'on', say, locale) ?? ''} onChange={setOn} />
      {issues.length > 0 && <Note tone="bad" role="alert"><IssueList issues={issues} /></Note>}
      {quoting.error !== null && <ProblemNote problem={quoting.error} />}
      <div className="row">
        <button type="submit" className="button button-main" disabled={quoting.isPending || on === '' || issues.length > 0}>{say('quote.send')}</button>
        <button type="button" className="button" onClick={onClose}>{say('action.intent.cancel')}</button>
      </div>
    </form>
  );
}
