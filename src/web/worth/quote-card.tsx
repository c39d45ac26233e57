import { quoteFiguresOf } from '#estimate';
import type { Quote } from '#workshop';
import { useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useDays, useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { dayHere } from '../ui/day-here.ts';
import { AnswerQuote } from './answer-quote.tsx';
import { SendQuote } from './send-quote.tsx';
import { useMoney, useQuoting } from './use-worth.ts';

interface QuoteCardProps {
  readonly quote: Quote;
  readonly onChange: () => void;
  readonly onVersion: () => void;
}

/** One quote: its state, sums and stages, its papers, and the next step. */
export function QuoteCard({ quote, onChange, onVersion }: QuoteCardProps) {
  const say = useSay();
  const locale = useLocale();
  const dayOf = useDays();
  const money = useMoney(quote.currency);
  const { id, quotes, isCurrent } = usePiano();
  const quoting = useQuoting();
  const [asks, ask] = useState<'send' | 'answer'>();
  const figures = quoteFiguresOf(quote);
  const isPart = quote.acceptedLines !== null && quote.acceptedLines.length < quote.lines.length;
  const follower = quotes.find(({ replaces }) => replaces === quote.id);
  const today = dayHere();
  const paper = /-(?:US|CA|MX)$/u.test(locale) ? 'letter' : 'a4';
  const address = (kind: 'pdf' | 'csv'): string => `/api/pianos/${encodeURIComponent(id)}/quotes/${encodeURIComponent(quote.id)}/quote.${kind}?${new URLSearchParams({ ...(kind === 'pdf' ? { paper } : {}), locale }).toString()}`;
  const name = say('quote.subtitle', { title: quote.title, version: quote.version });
  return (
    <article className="quote-card" aria-label={name}>
      <div className="row row-between">
        <h3>{name}</h3>
        <span className="quote-state">{say(isPart ? 'quote.state.part' : `quote.state.${quote.state}`)}{quote.state === 'sent' && quote.validUntil !== null && quote.validUntil < today && `, ${say('quote.state.over')}`}</span>
      </div>
      <p>
        <strong>{say(isPart ? 'quote.sum.taken' : 'quote.sum.total')}: {money(figures.totalMinor)}</strong>
        {quote.tax.regime === 'ordinary' && ` (${say(quote.includesTax ? 'quote.sum.taxIn' : 'quote.sum.tax', { rate: quote.tax.ratePct })}: ${money(figures.taxMinor)})`}
      </p>
      <p className="soft">{[quote.sentOn === null ? '' : `${say('quote.fact.sentOn')} ${dayOf(quote.sentOn)}`, quote.validUntil === null ? '' : `${say('quote.fact.validUntil')} ${dayOf(quote.validUntil)}`, quote.answeredOn === null ? '' : `${say('quote.answer.on')} ${dayOf(quote.answeredOn)}`].filter((part) => part !== '').join(' · ')}</p>
      {figures.stages.length > 0 && <ul>{figures.stages.map(({ words, amountMinor }, index) => <li key={`${words} ${String(index)}`}>{words}: {money(amountMinor)}</li>)}</ul>}
      {follower !== undefined && <p className="soft">{say('quote.replaced', { version: follower.version })}</p>}
      {quoting.error !== null && <ProblemNote problem={quoting.error} />}
      <div className="row no-print">
        <a className="button button-main" href={address('pdf')} target="_blank" rel="noreferrer">{say('quote.pdf')}<span className="visually-hidden"> {name}</span></a>
        <a className="button" href={address('csv')} download>{say('quote.csv')}<span className="visually-hidden"> {name}</span></a>
        {isCurrent && quote.state === 'draft' && (
          <>
            <button type="button" className="button" onClick={onChange}>{say('quote.change')}</button>
            <button type="button" className="button" onClick={() => { ask('send'); }}>{say('quote.send')}</button>
            <button type="button" className="button button-quiet" disabled={quoting.isPending} onClick={() => { quoting.mutate({ kind: 'withdraw', id: quote.id }); }}>{say('quote.withdraw')}</button>
          </>
        )}
        {isCurrent && quote.state === 'sent' && <button type="button" className="button" onClick={() => { ask('answer'); }}>{say('quote.answer.note')}</button>}
        {isCurrent && quote.state !== 'draft' && follower === undefined && <button type="button" className="button" onClick={onVersion}>{say('quote.newVersion')}</button>}
      </div>
      {asks === 'send' && quote.state === 'draft' && <SendQuote quote={quote} today={today} onClose={() => { ask(undefined); }} />}
      {asks === 'answer' && quote.state === 'sent' && <AnswerQuote quote={quote} today={today} onClose={() => { ask(undefined); }} />}
    </article>
  );
}
