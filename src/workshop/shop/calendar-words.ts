import type { Say } from '#text';
import type { CalendarEntry } from './calendar.ts';
import { isScheduled } from './calendar.ts';
import type { ShopCard } from './records.ts';

/** What the calendar is written from. */
export interface CalendarMaterial {
  readonly cards: readonly ShopCard[];
  /** Cards that were withdrawn after they had stood. */
  readonly withdrawn: readonly ShopCard[];
  /** Names of the pianos by their ids. */
  readonly pianos: ReadonlyMap<string, string>;
}

/** The calendar's entries in words: what for, whose, which piano, where. */
export function calendarEntriesOf({ cards, withdrawn, pianos }: CalendarMaterial, say: Say): readonly CalendarEntry[] {
  const all = [...cards, ...withdrawn];
  const contacts = new Map(all.flatMap((card) => (card.kind === 'contact' ? [[card.id, card.details] as const] : [])));
  const gone = new Set(withdrawn.map(({ id }) => id));
  return all.filter(isScheduled).map((card) => {
    const person = card.person === null ? undefined : (contacts.get(card.person)?.name ?? say('shop.erased'));
    const piano = card.pianoId === null ? undefined : pianos.get(card.pianoId);
    const address = card.kind === 'appointment' && card.where === 'home' && card.person !== null ? (contacts.get(card.person)?.address ?? '') : '';
    const places = card.kind === 'appointment' ? [say(`shop.where.${card.where}`), card.details?.place ?? '', address] : [];
    return {
      card,
      summary: [say(`shop.purpose.${card.purpose}`), person, piano].filter((part) => part !== undefined).join(' · '),
      description: card.details?.words ?? '',
      location: places.filter((part) => part !== '').join(', '),
      standing: !gone.has(card.id),
    };
  });
}
