import type { JudgedShipment, PaperRecord, RuleBook, Shipment } from '#workshop';
import { judgeShipment, shipmentsOf } from '#workshop';
import { useMemo, useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import CardDialog from '../shop/card-dialog.tsx';
import { nameOf } from '../shop/say-card.ts';
import type { ShopBook } from '../shop/shop-queries.ts';
import { withdrawCard } from '../shop/shop-writing.ts';
import { ShipmentCard } from './shipment-card.tsx';

interface ShipmentsPanelProps {
  readonly book: ShopBook;
  readonly records: readonly PaperRecord[];
  readonly rules: RuleBook;
}

/** What is planned or was done with the piano that may need papers, each held against the rules of its day. */
export function ShipmentsPanel({ book, records, rules }: ShipmentsPanelProps) {
  const say = useSay();
  const { id } = usePiano();
  const [open, setOpen] = useState<{ readonly card?: Shipment }>();
  const [problem, setProblem] = useState<unknown>();
  const judged = useMemo((): readonly JudgedShipment[] => shipmentsOf(book.cards, id).map((shipment) => judgeShipment(shipment, records, rules)), [book.cards, id, records, rules]);
  return (
    <section className="panel" aria-labelledby="papers-shipments">
      <div className="row row-between">
        <h2 id="papers-shipments">{say('papers.shipments')}</h2>
        <button type="button" className="button button-main no-print" onClick={() => { setOpen({}); }}>{say('papers.shipments.add')}</button>
      </div>
      {judged.length === 0 && <p>{say('papers.shipments.none')}</p>}
      {judged.map((one) => (
        <ShipmentCard
          key={one.shipment.id} judged={one} person={nameOf(one.shipment.person, book, say)} onCorrect={() => { setOpen({ card: one.shipment }); }}
          onWithdraw={() => { setProblem(undefined); withdrawCard(one.shipment.id).catch(setProblem); }}
        />
      ))}
      {problem !== undefined && <ProblemNote problem={problem} />}
      {open !== undefined && <CardDialog key={open.card?.id ?? 'new'} kind="shipment" book={book} card={open.card} known={open.card === undefined ? { pianoId: id } : {}} onClose={() => { setOpen(undefined); }} />}
    </section>
  );
}
