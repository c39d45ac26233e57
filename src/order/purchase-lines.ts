import { noteNameOf, type Compass } from '#instrument';
import type { Say } from '#text';
import type { StringOrder } from './string-order.ts';

/** One line of a purchase as the shop's book takes it; `what` says what kind of stock it would be. */
export interface PurchaseLine {
  readonly what: 'wire' | 'wrapWire' | 'wound' | 'leads' | 'hammers';
  readonly name: string;
  readonly sizeMm: number | null;
  readonly amount: number;
  readonly unit: 'm' | 'piece';
}

/**
 * What a string order comes to as lines of a purchase: plain wire by diameter in metres, rounded up to the metre,
 * and wound strings note by note in pieces. Core and wrap wire are the winder's and are left out. @source OWN
 */
export function purchaseLinesOf({ notes, wire }: StringOrder, compass: Compass, say: Say): readonly PurchaseLine[] {
  const plain = wire.filter(({ use }) => use === 'plain').map(({ diameterMm, totalMm }): PurchaseLine =>
    ({ what: 'wire', name: say('parts.line.wire'), sizeMm: Number(diameterMm.toFixed(3)), amount: Math.ceil(totalMm / 1000), unit: 'm' }));
  const wound = notes.flatMap(({ key, wire: string, strings }): readonly PurchaseLine[] =>
    (string?.kind === 'wound' && strings !== undefined ? [{ what: 'wound', name: say('parts.line.wound', { note: noteNameOf(compass, key), key }), sizeMm: null, amount: strings, unit: 'piece' }] : []));
  return [...plain, ...wound];
}
