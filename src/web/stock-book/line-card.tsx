import { lineTitle } from '#estimate';
import { currencyOf, formatMoney } from '#money';
import type { StockLine } from '#workshop';
import type { ReactNode } from 'react';
import type { FigureStory } from '../figure/figure-store.ts';
import { OpenFigure } from '../figure/figure.tsx';
import { useDays, useFigures, useLocale, useSay } from '../language/use-say.ts';

interface LineCardProps {
  readonly line: StockLine;
  /** Level of its heading. */
  readonly heading: 'h3' | 'h4';
  /** What can be done with it. */
  readonly children: ReactNode;
}

/** One piano of the stock book: bought, sold, what follows, and what is missing. */
export function LineCard({ line, heading: Heading, children }: LineCardProps) {
  const say = useSay();
  const { gaps, isSold } = line;
  const title = lineTitle(line, say);
  return (
    <article className="stock-line" aria-label={title}>
      <div className="row row-between">
        <Heading>{title}</Heading>
        {!isSold && <span className="stock-state">{say('stockBook.inStock')}</span>}
      </div>
      <div className="stock-sides">
        <Bought line={line} />
        {isSold && <Sold line={line} />}
        {isSold && <Outcome line={line} />}
      </div>
      {gaps.length > 0 && (
        <ul className="stock-gaps" aria-label={say('stockBook.gaps')}>
          {gaps.map((gap) => <li key={gap}><span aria-hidden="true">! </span>{say(`stockBook.gap.${gap}`)}</li>)}
        </ul>
      )}
      <div className="row no-print">{children}</div>
    </article>
  );
}

/** An amount with its currency, or that it is not stated. */
export function useAmount(): (minor: number | null, code: string | null) => string {
  const say = useSay();
  const locale = useLocale();
  return (minor, code) => {
    const currency = currencyOf(code ?? '');
    return minor === null || currency === undefined ? say('stockBook.none') : formatMoney({ minor, currency }, locale);
  };
}

function Fact({ label, minor, children }: { readonly label: string; readonly minor?: number | null; readonly children: ReactNode }) {
  return <div><dt>{label}</dt><dd className="stock-fact" data-minor={minor ?? undefined}>{children}</dd></div>;
}

function Bought({ line: { boughtOn, purchaseInvoice, seller, purchaseMinor, purchaseCurrency, eligible } }: { readonly line: StockLine }) {
  const say = useSay();
  const day = useDays();
  const amount = useAmount();
  return (
    <dl className="facts">
      <Fact label={say('stockBook.column.bought')}><Invoiced on={boughtOn === null ? say('stockBook.none') : day(boughtOn)} invoice={purchaseInvoice} /></Fact>
      <Fact label={say('stockBook.column.seller')}><Party {...seller} /></Fact>
      <Fact label={say('stockBook.column.purchase')} minor={purchaseMinor}>{amount(purchaseMinor, purchaseCurrency)}</Fact>
      <Fact label={say('stockBook.column.eligible')}>{say(`papers.truth.${eligible === null ? 'none' : eligible ? 'yes' : 'no'}`)}</Fact>
    </dl>
  );
}

function Sold({ line: { soldOn, saleInvoice, buyer, saleMinor, saleCurrency } }: { readonly line: StockLine }) {
  const say = useSay();
  const day = useDays();
  const amount = useAmount();
  return (
    <dl className="facts">
      <Fact label={say('stockBook.column.sold')}><Invoiced on={soldOn === null ? say('stockBook.none') : day(soldOn)} invoice={saleInvoice} /></Fact>
      <Fact label={say('stockBook.column.buyer')}><Party {...buyer} /></Fact>
      <Fact label={say('stockBook.column.sale')} minor={saleMinor}>{amount(saleMinor, saleCurrency)}</Fact>
    </dl>
  );
}

/** Margin or loss, and the tax held in it. */
function Outcome({ line }: { readonly line: StockLine }) {
  const { marginMinor, lossMinor, taxMinor, saleCurrency, regime, ratePct, rateSince } = line;
  const say = useSay();
  const day = useDays();
  const figure = useFigures();
  const amount = useAmount();
  const rate = ratePct === null ? '' : figure(ratePct, Number.isInteger(ratePct) ? 0 : 1);
  const isScheme = regime === 'margin';
  const opened = (output: 'marginMinor' | 'vatMinor', title: string, minor: number | null): ReactNode => {
    if (minor === null) return say('stockBook.notWorkedOut');
    const story = taxStory(title, line, output);
    return story === undefined ? amount(minor, saleCurrency) : <OpenFigure story={() => story}>{amount(minor, saleCurrency)}</OpenFigure>;
  };
  return (
    <dl className="facts">
      <Fact label={say('stockBook.column.margin')} minor={marginMinor}>{opened('marginMinor', say('stockBook.column.margin'), marginMinor)}</Fact>
      {lossMinor !== null && lossMinor > 0 && <Fact label={say('stockBook.column.loss')} minor={lossMinor}>{say('stockBook.lossOf', { amount: amount(lossMinor, saleCurrency) })}</Fact>}
      {isScheme ? (
        <Fact label={say('stockBook.column.tax')} minor={taxMinor}>
          {opened('vatMinor', say('stockBook.column.tax'), taxMinor)}
          {taxMinor !== null && <span className="soft small"> {rateSince === null ? say('stockBook.atRate', { rate }) : say('stockBook.rateSince', { rate, day: day(rateSince) })}</span>}
        </Fact>
      ) : <Fact label={say('stockBook.field.sold.regime')}>{regime === null ? say('stockBook.none') : say(`worth.regime.${regime}`)}</Fact>}
    </dl>
  );
}

function Invoiced({ on, invoice }: { readonly on: string; readonly invoice: string }) {
  const say = useSay();
  return <>{on}{invoice !== '' && <span className="soft small"> · {say('stockBook.column.invoice', { number: invoice })}</span>}</>;
}

function Party({ name, address }: StockLine['seller']) {
  const say = useSay();
  return <>{name === '' ? say('stockBook.none') : name}{address !== '' && <span className="soft small stock-address">{address}</span>}</>;
}

/** How margin and tax follow; nothing where the sale stands outside the scheme or something is missing. */
function taxStory(title: string, { purchaseMinor, saleMinor, ratePct, saleCurrency, rounding, taxMinor }: StockLine, output: string): FigureStory | undefined {
  if (taxMinor === null) return undefined;
  return { title, operation: 'margin-vat', output, input: { purchaseMinor, saleMinor, ratePct, currency: saleCurrency, rounding } };
}
