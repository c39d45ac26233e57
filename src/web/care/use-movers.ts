import { useSay } from '../language/use-say.ts';
import { nameOf } from '../shop/say-card.ts';
import { useShopBook } from '../shop/shop-queries.ts';

/** Movers of the shop to pick from, nobody first; whoever is picked already stays in the list, whatever became of them. */
export function useMovers(picked: string): readonly { readonly value: string; readonly label: string }[] {
  const say = useSay();
  const { book } = useShopBook({ kinds: [] });
  const movers = [...(book?.contacts.values() ?? [])].filter(({ id, roles, details }) => id === picked || (roles.includes('mover') && details !== null));
  const known = movers.map(({ id, details }) => ({ value: id, label: details?.name ?? say('shop.erased') }));
  const unlisted = picked === '' || movers.some(({ id }) => id === picked) ? [] : [{ value: picked, label: book === undefined ? '…' : say('shop.erased') }];
  return [{ value: '', label: say('shop.field.person.none') }, ...known, ...unlisted];
}

/** Name of the mover of a move; nothing where none is stated or the book of the shop is on its way. */
export function useMoverName(mover: string | null): string | undefined {
  const say = useSay();
  const { book } = useShopBook({ kinds: [] });
  return book === undefined ? undefined : nameOf(mover, book, say);
}
