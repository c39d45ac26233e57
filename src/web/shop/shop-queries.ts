import { type CardOf, type ShopCard, type ShopKind, bookOf } from '#workshop';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { call } from '../api/client.ts';

/** Of everything of the shop: every step of the shop makes it stale. */
export const SHOP_KEY = ['shop'] as const;

/** Which cards a page needs beside the people: it is sent no others, so that it stays quick when the shop is old. */
export interface ShopAsked {
  readonly kinds: readonly ShopKind[];
  /** Cards that name a piano come only for this one. */
  readonly pianoId?: string;
  /** Only cards that name this person. */
  readonly person?: string;
  /** Only what is not yet done, answered, ended, received or brought back. */
  readonly isOpen?: true;
}

export const shopQuery = ({ kinds, pianoId, person, isOpen }: ShopAsked) => {
  const query = { kinds: kinds.toSorted().join(','), piano: pianoId, person, open: isOpen === true ? 'true' : undefined };
  return queryOptions({ queryKey: [...SHOP_KEY, 'cards', query], queryFn: ({ signal }) => call('getShop', { query, signal }).then(({ cards }) => cards) });
};

const contactsQuery = shopQuery({ kinds: ['contact'] });
const NO_CARDS: readonly ShopCard[] = [];

/** Pianos by name as a reader of this browser's language sorts them. */
function inOrder(pianos: readonly { readonly id: string; readonly name: string }[]): readonly { readonly id: string; readonly name: string }[] {
  const { compare } = new Intl.Collator(undefined, { numeric: true });
  return pianos.toSorted((a, b) => compare(a.name, b.name) || compare(a.id, b.id));
}

const namesQuery = queryOptions({
  queryKey: ['pianos', 'names'],
  queryFn: ({ signal }) => call('listPianoNames', { signal }).then(({ pianos }) => inOrder(pianos)),
});

export type Contact = CardOf<'contact'>;

/** The book of the shop as a page looks at it. */
export interface ShopBook {
  readonly cards: readonly ShopCard[];
  readonly contacts: ReadonlyMap<string, Contact>;
  /** Names of the pianos by their ids. */
  readonly pianos: ReadonlyMap<string, string>;
}

/** The people of the shop, and of its cards those a page asks for; undefined while they are fetched. */
export function useShopBook(asked: ShopAsked): { readonly book: ShopBook | undefined; readonly error: Error | null; readonly refetch: () => void } {
  const shop = useQuery({ ...shopQuery(asked), enabled: asked.kinds.length > 0 });
  const contacts = useQuery(contactsQuery);
  const pianos = useQuery(namesQuery);
  const cards = asked.kinds.length === 0 ? NO_CARDS : shop.data;
  const book = useMemo((): ShopBook | undefined => {
    if (cards === undefined || contacts.data === undefined || pianos.data === undefined) return undefined;
    return {
      cards,
      contacts: new Map(cardsOfKind(contacts.data, 'contact').map((card) => [card.id, card])),
      pianos: new Map(pianos.data.map(({ id, name }) => [id, name])),
    };
  }, [cards, contacts.data, pianos.data]);
  return { book, error: shop.error ?? contacts.error ?? pianos.error, refetch: () => { for (const query of [...(asked.kinds.length === 0 ? [] : [shop]), contacts, pianos]) void query.refetch(); } };
}

/** The cards of one kind. */
export function cardsOfKind<K extends ShopKind>(cards: readonly ShopCard[], kind: K): readonly CardOf<K>[] {
  return cards.filter((card): card is CardOf<K> => card.kind === kind);
}

/** The chain a card is written in, by which its steps are undone. */
export function chainOfCard({ workshopId }: Pick<ShopCard, 'workshopId'>): string {
  return bookOf(workshopId);
}
