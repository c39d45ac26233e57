import type { Say } from '#text';
import type { ShopCard } from '#workshop';
import { sayMaybe } from '../language/say-maybe.ts';
import type { ShopBook } from './shop-queries.ts';

/** How a card is put into words. */
export interface CardTelling {
  readonly say: Say;
  readonly book: Pick<ShopBook, 'contacts' | 'pianos'>;
  /** A day, or a month or year where no more is known. */
  readonly day: (iso: string) => string;
  readonly moment: (iso: string) => string;
}

/** The name of a person, or that it was forgotten. */
export function nameOf(person: string | null, { contacts }: Pick<ShopBook, 'contacts'>, say: Say): string | undefined {
  return person === null ? undefined : (contacts.get(person)?.details?.name ?? say('shop.erased'));
}

/** A card in one line: what it is, which piano, how it stands. */
export function headOfCard(card: ShopCard, { say, book }: CardTelling): string {
  const piano = 'pianoId' in card && card.pianoId !== null ? book.pianos.get(card.pianoId) : undefined;
  const parts = (...words: readonly (string | undefined)[]): string => words.filter((word) => word !== undefined && word !== '').join(' · ');
  switch (card.kind) {
    case 'contact': return card.details?.name ?? say('shop.erased');
    case 'enquiry': return parts(say(`shop.about.${card.about}`), piano);
    case 'ownership': return parts(say(`shop.relation.${card.relation}`), piano);
    case 'appointment': return parts(say(`shop.purpose.${card.purpose}`), piano, say(`shop.where.${card.where}`));
    case 'loan': return parts(say('shop.kind.loan'), piano);
    case 'reminder': return parts(say(`shop.purpose.${card.purpose}`), piano);
    case 'stock': return card.name;
    case 'acquisition': return parts(say('shop.kind.acquisition'), card.description);
    case 'sale': return parts(say('shop.kind.sale'), card.invoice);
    case 'template':
    case 'stockMove':
    case 'purchase':
    case 'ruleFile':
    case 'ownRule':
    case 'standard':
    case 'receipt':
    case 'rates':
    case 'taxYear':
    case 'hours': return say(`shop.kind.${card.kind}`);
    case 'shipment': return parts(say(`papers.action.${card.action}`), piano, card.from === card.to ? card.from : `${card.from} → ${card.to}`);
  }
}

/** When a card is of, and how it stands. */
export function whenOfCard(card: ShopCard, { say, day, moment }: CardTelling): string {
  const status = 'status' in card ? sayMaybe(say, `shop.status.${card.status}`) : '';
  const span = (from: string | null, until: string | null): string => {
    if (from !== null && until !== null) return say('people.when.span', { from: day(from), until: day(until) });
    return from !== null ? say('people.when.from', { from: day(from) }) : until === null ? '' : say('people.when.until', { until: day(until) });
  };
  const parts = (...words: readonly string[]): string => words.filter((word) => word !== '').join(' · ');
  switch (card.kind) {
    case 'contact':
    case 'template':
    case 'stock':
    case 'stockMove':
    case 'purchase':
    case 'ruleFile':
    case 'ownRule':
    case 'standard':
    case 'receipt':
    case 'rates':
    case 'taxYear':
    case 'hours': return '';
    case 'acquisition':
    case 'sale': return card.on === null ? '' : day(card.on);
    case 'shipment':
    case 'enquiry': return parts(day(card.on), status);
    case 'ownership': return span(card.from, card.until);
    case 'appointment': return parts(moment(card.startsAt), say('people.when.minutes', { minutes: card.minutes }), status);
    case 'loan': return parts(span(card.from, card.until), card.returnedOn === null ? '' : say('people.when.returned', { day: day(card.returnedOn) }));
    case 'reminder': return parts(say('people.soon.due', { day: day(card.firstOn) }), card.everyMonths === null ? '' : say('people.soon.again', { months: card.everyMonths }), card.until === null ? '' : say('people.when.until', { until: day(card.until) }), status);
  }
}
