import { Link } from '@tanstack/react-router';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { nameOf } from '../shop/say-card.ts';
import { type ShopBook, cardsOfKind, useShopBook } from '../shop/shop-queries.ts';
import { useCardTelling } from '../shop/use-card-telling.ts';
import { type LineRow, type StayDays, ownersLine } from './owners-line.ts';
import { openStay } from './stay-fold.tsx';

/** Whose the piano was over the years, and when it was in the shop: one line of time, gaps named. */
export function Owners({ stays }: { readonly stays: readonly StayDays[] }) {
  const say = useSay();
  const { id, instrument } = usePiano();
  const { book } = useShopBook({ kinds: ['ownership'], pianoId: id });
  if (book === undefined) return <p className="soft">{say('shell.loading')}</p>;
  const owners = cardsOfKind(book.cards, 'ownership').filter(({ pianoId, relation }) => pianoId === id && relation === 'owns');
  return (
    <>
      {owners.length === 0 && <p>{say('story.owners.none')}</p>}
      <ol className="owner-list">
        {ownersLine(owners, stays, instrument.year).map((row) => <OwnersRow key={keyOf(row)} row={row} book={book} />)}
      </ol>
    </>
  );
}

type Row = LineRow<ReturnType<typeof cardsOfKind<'ownership'>>[number]>;

const keyOf = (row: Row): string => (row.kind === 'owner' ? row.owner.id : row.kind === 'stay' ? `stay-${String(row.cycle)}` : `gap-${row.from}`);

function OwnersRow({ row, book }: { readonly row: Row; readonly book: ShopBook }) {
  const say = useSay();
  const { day } = useCardTelling(book);
  const from = row.from === null ? say('story.owners.unknown') : day(row.from);
  const until = row.until === null ? say('story.owners.now') : day(row.until);
  return (
    <li className={`owner-row owner-${row.kind}`}>
      <span className="owner-years">{row.kind === 'stay' && from === until ? from : `${from} – ${until}`}</span>
      {row.kind === 'gap' && <span className="soft">{say('story.owners.gap')}</span>}
      {row.kind === 'stay' && <button type="button" className="button" onClick={() => { openStay(row.cycle); }}>{say('story.stay.inShop', { cycle: row.cycle })}</button>}
      {row.kind === 'owner' && (
        <span>
          <Link to="/people" search={{ person: row.owner.person }}>{nameOf(row.owner.person, book, say)}</Link>
          {row.owner.details !== null && row.owner.details.words !== '' && <span className="soft"> · {row.owner.details.words}</span>}
        </span>
      )}
    </li>
  );
}
