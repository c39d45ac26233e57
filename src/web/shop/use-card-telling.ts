import { useLocale, useMoments, useSay } from '../language/use-say.ts';
import type { CardTelling } from './say-card.ts';
import type { ShopBook } from './shop-queries.ts';

/** Puts cards of the shop into words of the reader; a year stays a year, a month a month. */
export function useCardTelling(book: Pick<ShopBook, 'contacts' | 'pianos'>): CardTelling {
  const say = useSay();
  const locale = useLocale();
  const moment = useMoments();
  const day = (iso: string): string => {
    if (iso.length === 4) return iso;
    const style = iso.length === 7 ? { year: 'numeric', month: 'long' } as const : { dateStyle: 'medium' } as const;
    return new Date(iso).toLocaleDateString(locale, { ...style, timeZone: 'UTC' });
  };
  return { say, book, day, moment };
}
