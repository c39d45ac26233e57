import { type ShopCard, nextDueOf } from '#workshop';
import { dayHere } from '../ui/day-here.ts';
import type { ShopAsked } from './shop-queries.ts';

/** One thing that is coming, or waits for an answer; `on` is its day or moment, by which it is put in order. */
export interface Coming {
  readonly card: ShopCard;
  readonly on: string;
  readonly why: 'planned' | 'past' | 'due' | 'out' | 'late' | 'enquiry';
}

/** The cards that something coming is told from. */
export const comingAsked: ShopAsked = { kinds: ['appointment', 'reminder', 'loan', 'enquiry'], isOpen: true };

/** Reminders are told this far ahead. */
const AHEAD_DAYS = 90;

/** What is coming, from a moment on: visits, what falls due, what is out on loan, enquiries without an answer; earliest first. */
export function comingOf(cards: readonly ShopCard[], now: Date): readonly Coming[] {
  const today = dayHere(now);
  const horizon = dayHere(new Date(now.getTime() + AHEAD_DAYS * 86_400_000));
  return cards.flatMap((card): readonly Coming[] => {
    switch (card.kind) {
      case 'appointment': return card.status === 'planned' ? [{ card, on: card.startsAt, why: Date.parse(card.startsAt) + card.minutes * 60_000 < now.getTime() ? 'past' : 'planned' }] : [];
      case 'reminder': {
        const due = nextDueOf(card, today);
        return due === undefined || due > horizon ? [] : [{ card, on: due, why: 'due' }];
      }
      case 'loan': return card.returnedOn === null && card.from <= today ? [{ card, on: card.until ?? card.from, why: card.until !== null && card.until < today ? 'late' : 'out' }] : [];
      case 'enquiry': return card.status === 'open' ? [{ card, on: card.on, why: 'enquiry' }] : [];
      default: return [];
    }
  }).sort((a, b) => a.on.localeCompare(b.on));
}
