import type { Estimate, Quote } from '#workshop';
import { useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { QuoteCard } from './quote-card.tsx';
import { QuoteForm } from './quote-form.tsx';

type Open = { readonly from?: Quote; readonly as: 'new' | 'draft' | 'version' };

/** The quotes of the stay, newest first, and the form to draw one up, correct a draft or follow with a new version. */
export function QuotesPanel({ estimate }: { readonly estimate: Estimate }) {
  const say = useSay();
  const { quotes, isCurrent } = usePiano();
  const [open, setOpen] = useState<Open>();
  return (
    <section className="panel" aria-labelledby="worth-quotes">
      <div className="row row-between">
        <h2 id="worth-quotes">{say('quote.quotes')}</h2>
        {isCurrent && open === undefined && estimate.lines.length > 0 && <button type="button" className="button no-print" onClick={() => { setOpen({ as: 'new' }); }}>{say('quote.new')}</button>}
      </div>
      {open !== undefined && <QuoteForm key={`${open.as} ${open.from?.id ?? ''}`} estimate={estimate} {...open} onClose={() => { setOpen(undefined); }} />}
      {quotes.length === 0 && <p>{say('quote.none')}</p>}
      {quotes.toReversed().map((quote) => (
        <QuoteCard key={quote.id} quote={quote} onChange={() => { setOpen({ from: quote, as: 'draft' }); }} onVersion={() => { setOpen({ from: quote, as: 'version' }); }} />
      ))}
    </section>
  );
}
