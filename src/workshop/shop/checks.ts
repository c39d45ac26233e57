import { ruleFileIssues, ruleIssues, shippedRules } from '#law';
import type { Issue } from '#result';
import type { CareOf } from '../care/records.ts';
import type { Quote } from '../quote.ts';
import type { CardOf, ShopCard, ShopCardGiven } from './records.ts';

/** Days of a card that stand in the wrong order, each named with the day it has to follow, and rules that do not fit together. */
export function orderIssues(card: ShopCardGiven): readonly Issue[] {
  switch (card.kind) {
    case 'ownership': return notBefore('until', card.until, card.from);
    case 'reminder': return notBefore('until', card.until, card.firstOn);
    case 'loan': return [...notBefore('until', card.until, card.from), ...notBefore('returnedOn', card.returnedOn, card.from), ...notBefore('after.on', card.after?.on, card.before?.on)];
    case 'contact':
    case 'enquiry':
    case 'appointment':
    case 'template':
    case 'stock':
    case 'stockMove':
    case 'receipt':
    case 'rates':
    case 'taxYear':
    case 'shipment': return [];
    case 'ruleFile': return [...ruleFileIssues(card.file, 'file'), ...(card.file.issued > shippedRules.issued ? [] : [notNewer(card.file.issued, shippedRules.issued)])];
    case 'ownRule': return ruleIssues(card.rule, 'rule');
    case 'standard': return volumeIssues(card.target);
    case 'hours': return clockIssues(card);
    case 'acquisition':
    case 'sale': return unpriced({ currency: card.currency, lines: [card] });
    case 'purchase': return [...unpriced(card), ...notBefore('expectedOn', card.expectedOn, card.orderedOn), ...notBefore('receivedOn', card.receivedOn, card.orderedOn)];
  }
}

/** A price says nothing without its currency. */
function unpriced({ currency, lines }: { readonly currency: string | null; readonly lines: readonly { readonly priceMinor: number | null }[] }): readonly Issue[] {
  return currency !== null || lines.every(({ priceMinor }) => priceMinor === null) ? [] : [{ code: 'required', path: 'currency', given: null, allowed: 'a currency code of ISO 4217, such as EUR', params: { reason: 'currency' } }];
}

/** Volumes a target is stated for, the smaller first. */
function volumeIssues({ volumes }: Extract<ShopCardGiven, { kind: 'standard' }>['target']): readonly Issue[] {
  return volumes === null || volumes.toM3 > volumes.fromM3 ? [] : [{ code: 'order', path: 'target.volumes.toM3', given: volumes.toM3, allowed: `above ${String(volumes.fromM3)} m³`, params: { above: volumes.fromM3 } }];
}

/** Time is by the clock or typed; a clock that stopped had started, and not later. */
function clockIssues({ hours, startedAt, stoppedAt }: Extract<ShopCardGiven, { kind: 'hours' }>): readonly Issue[] {
  if (startedAt === null) {
    const given = stoppedAt ?? hours;
    return hours !== null && stoppedAt === null ? [] : [{ code: 'required', path: stoppedAt === null ? 'hours' : 'startedAt', given, allowed: 'hours, or when the clock was started', params: { reason: 'time' } }];
  }
  if (stoppedAt === null || Date.parse(stoppedAt) >= Date.parse(startedAt)) return [];
  return [{ code: 'order', path: 'stoppedAt', given: stoppedAt, allowed: `${startedAt} or later`, params: { reason: 'dayBefore', first: startedAt } }];
}

/** A file of rules that is not newer than those kept already, or that comes under the name of one of them. */
export function olderThanKept({ file }: Pick<CardOf<'ruleFile'>, 'file'>, cards: readonly ShopCard[]): readonly Issue[] {
  const newest = cards.flatMap((card) => (card.kind === 'ruleFile' ? [card.file.issued] : [])).sort().at(-1);
  return newest === undefined || file.issued > newest ? [] : [notNewer(file.issued, newest)];
}

function notNewer(issued: string, newest: string): Issue {
  return { code: 'order', path: 'file.issued', given: issued, allowed: `after ${newest}, the day of the rules in use`, params: { reason: 'rulesOlder', first: newest } };
}

/** Refuses a day that stands before the one it has to follow. A day known only to the year or month follows any day within it. */
export function notBefore(path: string, day: string | null | undefined, first: string | null | undefined): readonly Issue[] {
  if (day == null || first == null) return [];
  const known = Math.min(day.length, first.length);
  return day.slice(0, known) >= first.slice(0, known) ? [] : [{ code: 'order', path, given: day, allowed: `${first} or later`, params: { reason: 'dayBefore', first } }];
}

/** What is open at the bench and on paper. */
export interface OpenWork {
  /** Jobs not yet done, by piano. */
  readonly jobs: ReadonlyMap<string, number>;
  /** Quotes drawn up or sent and not answered. */
  readonly quotes: readonly Pick<Quote, 'customer' | 'title' | 'version' | 'state'>[];
  /** Moves of every piano, called by its name. */
  readonly moves: readonly (Pick<CareOf<'move'>, 'mover' | 'status' | 'on'> & { readonly pianoId: string; readonly piano: string })[];
}

/** Pianos a person owns to this day. */
export function pianosOwnedBy(person: string, cards: readonly ShopCard[]): ReadonlySet<string> {
  return new Set(cards.flatMap((card) => (card.kind === 'ownership' && card.person === person && card.relation === 'owns' && card.until === null && card.pianoId !== null ? [card.pianoId] : [])));
}

/** What is still open with a person, so that forgetting them would leave it without anybody: one issue for each. */
export function openWith(person: string, cards: readonly ShopCard[], { jobs, quotes, moves }: OpenWork): readonly Issue[] {
  const owned = pianosOwnedBy(person, cards);
  const unanswered = quotes.filter(({ customer, state }) => customer === person && (state === 'draft' || state === 'sent'));
  const planned = moves.filter(({ mover, status, pianoId }) => status === 'planned' && (mover === person || owned.has(pianoId)));
  const onPaper = unanswered.map(({ title, version }) => open('quote', `${title} (${String(version)})`));
  const onTheWay = planned.map(({ on, piano }) => open('move', `${on}, ${piano}`));
  return [...onPaper, ...onTheWay, ...cards.flatMap((card): readonly Issue[] => {
    if (!('person' in card) || card.person !== person) return [];
    switch (card.kind) {
      case 'enquiry': return card.status === 'open' ? [open('enquiry', card.on)] : [];
      case 'appointment': return card.status === 'planned' ? [open('appointment', card.startsAt.slice(0, 10))] : [];
      case 'loan': return card.returnedOn === null ? [open('loan', card.from)] : [];
      case 'reminder': return card.status === 'active' ? [open('reminder', card.firstOn)] : [];
      case 'shipment': return card.status === 'planned' ? [open('shipment', card.on)] : [];
      case 'purchase': return card.status === 'ordered' ? [open('purchase', card.orderedOn ?? '')] : [];
      case 'stock': return [];
      case 'acquisition':
      case 'sale': return [open('stockBook', card.on ?? card.invoice)];
      case 'ownership': {
        const count = card.relation === 'owns' && card.until === null ? (jobs.get(card.pianoId ?? '') ?? 0) : 0;
        return count === 0 ? [] : [open('jobs', String(count))];
      }
    }
  })];
}

function open(what: string, on: string): Issue {
  return { code: 'conflict', path: '', given: `${what} ${on}`, allowed: `nobody who has an open ${what}`, params: { reason: `open.${what}`, on } };
}

/** A card of the shop that another names: the field it stands in, and the kind it has to be of. */
export interface NamedCard {
  readonly path: 'person' | 'stock' | 'purchase' | 'acquisition';
  readonly id: string;
  readonly kind: ShopCard['kind'];
}

type Naming = Pick<ShopCardGiven, 'kind'> & { readonly person?: string | null; readonly pianoId?: string | null; readonly stock?: string | null; readonly purchase?: string | null; readonly acquisition?: string | null };

/** Ids a card names: the person it is of, its piano, and every card of the shop. */
export function namedBy(card: Naming): { readonly person: string | null; readonly pianoId: string | null; readonly cards: readonly NamedCard[] } {
  const cards = ([['person', 'contact'], ['stock', 'stock'], ['purchase', 'purchase'], ['acquisition', 'acquisition']] as const)
    .flatMap(([path, kind]): readonly NamedCard[] => { const id = card[path] ?? null; return id === null ? [] : [{ path, id, kind }]; });
  return { person: card.person ?? null, pianoId: card.pianoId ?? null, cards };
}
