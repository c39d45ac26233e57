import { decisionOf, learntHoursOf } from '#estimate';
import type { Estimate } from '#workshop';
import { useQuery } from '@tanstack/react-query';
import { useMemo, useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { IssueList } from '../shell/issue-list.tsx';
import { Note } from '../ui/note.tsx';
import { shopQuery } from '../shop/shop-queries.ts';
import { DecisionPanel } from './decision-panel.tsx';
import { LearntPanel } from './learnt-panel.tsx';
import { LinesPanel } from './lines-panel.tsx';
import { QuotesPanel } from './quotes-panel.tsx';
import { ratesOf } from './rates-draft.ts';
import { TermsForm } from './terms-form.tsx';
import { TradePanel } from './trade-panel.tsx';
import { useShopEstimates } from './use-worth.ts';
import { WaysTable } from './ways-table.tsx';
import './worth.css';

const NONE: readonly Estimate[] = [];

/** What it would take and leave: the estimate in its ways, the decision, the quotes. */
export function WorthPage() {
  const say = useSay();
  const { instrument, estimate, isCurrent } = usePiano();
  const shop = useShopEstimates();
  const [isStating, setStating] = useState(false);
  const last = shop?.at(-1);
  const cards = useQuery(shopQuery({ kinds: ['rates'] }));
  const rates = ratesOf(cards.data ?? [], instrument.workshopId);
  return (
    <div className="page">
      <p className="soft small">{say('worth.accountant')}</p>
      {estimate === null && !isStating && (
        <section className="panel">
          <h2>{say('worth.empty.title')}</h2>
          <p>{say('worth.empty.text')}</p>
          {isCurrent && shop !== undefined && cards.data !== undefined && <div><button type="button" className="button button-main" onClick={() => { setStating(true); }}>{say('worth.begin')}</button></div>}
        </section>
      )}
      {isStating && isCurrent && <TermsForm estimate={estimate} last={last} rates={rates} onClose={() => { setStating(false); }} />}
      {estimate !== null && <Estimated estimate={estimate} shop={shop ?? NONE} onTerms={isStating || !isCurrent ? undefined : () => { setStating(true); }} />}
      <TradePanel />
    </div>
  );
}

function Estimated({ estimate, shop, onTerms }: { readonly estimate: Estimate; readonly shop: readonly Estimate[]; readonly onTerms: (() => void) | undefined }) {
  const say = useSay();
  const locale = useLocale();
  const { id, cycle } = usePiano();
  const decision = useMemo(() => decisionOf(estimate), [estimate]);
  const learnt = useMemo(() => learntHoursOf(shop), [shop]);
  const csv = `/api/pianos/${encodeURIComponent(id)}/estimate.csv?${new URLSearchParams({ cycle: String(cycle), locale }).toString()}`;
  if (!decision.ok) return <Note tone="bad" role="alert"><IssueList issues={decision.issues} /></Note>;
  const { ways } = decision.value;
  return (
    <>
      <section className="panel">
        <div className="row row-between">
          <h2 id="worth-ways">{say('worth.ways')}</h2>
          <span className="row no-print">
            {onTerms !== undefined && <button type="button" className="button" onClick={onTerms}>{say('worth.terms.change')}</button>}
            <a className="button" href={csv} download>{say('worth.ways.csv')}</a>
          </span>
        </div>
        {estimate.remark !== '' && <p>{estimate.remark}</p>}
        <WaysTable estimate={estimate} ways={ways} />
      </section>
      <DecisionPanel estimate={estimate} decision={decision.value} />
      <LinesPanel estimate={estimate} ways={ways} learnt={learnt} />
      <QuotesPanel estimate={estimate} />
      <LearntPanel estimates={shop} learnt={learnt} />
    </>
  );
}
