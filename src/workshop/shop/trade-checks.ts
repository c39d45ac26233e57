import type { Issue } from '#result';
import { notBefore } from './checks.ts';
import type { ShopCardGiven } from './records.ts';

type Given<K extends ShopCardGiven['kind']> = Omit<Extract<ShopCardGiven, { kind: K }>, 'details'>;

/** A purchase or sale of a piano as it stands in the book, by its id; what is personal is left out. */
export type StandingTrade = (Given<'acquisition'> | Given<'sale'>) & { readonly id: string };

/**
 * Refuses a running number that stands already, a second sale of one purchase, and a sale before its purchase.
 * `id`: the card that is being changed, where it stands already.
 */
export function tradeIssues(wanted: Given<'acquisition'> | Given<'sale'>, standing: readonly StandingTrade[], id?: string): readonly Issue[] {
  const others = standing.filter((card) => card.id !== id);
  if (wanted.kind === 'acquisition') {
    const sale = others.find((card) => card.kind === 'sale' && card.acquisition === id);
    return [...numberTaken(wanted.number, others), ...notAfter(wanted.on, sale?.on)];
  }
  const bought = others.find((card) => card.id === wanted.acquisition);
  const soldAlready = others.some((card) => card.kind === 'sale' && card.acquisition === wanted.acquisition);
  return [
    ...(soldAlready ? [{ code: 'conflict', path: 'acquisition', given: wanted.acquisition, allowed: 'a piano of the stock book that is not sold', params: { reason: 'soldAlready' } } as const] : []),
    ...notBefore('on', wanted.on, bought?.on),
  ];
}

/** Refuses to withdraw a purchase whose sale stands. */
export function withdrawIssues(id: string, standing: readonly StandingTrade[]): readonly Issue[] {
  return standing.some((card) => card.kind === 'sale' && card.acquisition === id) ? [{ code: 'conflict', path: 'kind', given: 'acquisition', allowed: 'a purchase whose sale was withdrawn first', params: { reason: 'hasSale' } }] : [];
}

function numberTaken(number: number, others: readonly StandingTrade[]): readonly Issue[] {
  return others.some((card) => card.kind === 'acquisition' && card.number === number) ? [{ code: 'duplicate', path: 'number', given: number, allowed: 'a number no other piano of the stock book has', params: { reason: 'stockNumber' } }] : [];
}

function notAfter(on: string | null, last: string | null | undefined): readonly Issue[] {
  return on === null || last == null || on <= last ? [] : [{ code: 'order', path: 'on', given: on, allowed: `${last} or earlier`, params: { reason: 'dayAfter', last } }];
}
