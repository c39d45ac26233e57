import { useSay } from '../language/use-say.ts';
import { ComingItems } from '../shop/coming-list.tsx';
import { comingOf } from '../shop/coming.ts';
import type { ShopBook } from '../shop/shop-queries.ts';
import { dayHere } from '../ui/day-here.ts';
import { useNow } from './use-now.ts';

/** Visits of today, what falls due today, and what should have been answered or brought back before. */
export function TodayList({ book }: { readonly book: ShopBook }) {
  const say = useSay();
  const now = useNow(60);
  const today = dayHere(now);
  const coming = comingOf(book.cards, now).filter(({ on, why }) => why === 'late' || why === 'past' || (why !== 'enquiry' && why !== 'out' && (on.length === 10 ? on : dayHere(new Date(on))) === today));
  return (
    <section className="panel" aria-labelledby="bench-today">
      <h2 id="bench-today">{say('bench.today')}</h2>
      {coming.length === 0 ? <p className="soft">{say('bench.today.none')}</p> : <ComingItems coming={coming} book={book} />}
    </section>
  );
}
