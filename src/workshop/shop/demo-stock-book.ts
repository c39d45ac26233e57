import type { DemoCard } from './demo-card.ts';
import type { ShopCardDraft } from './records.ts';

const INVENTED = 'Invented for demonstration: no real piano, price or person.';
const party = (name: string, address = '2 Example Road\n00000 Exampleton') => ({ name: `${name}, invented`, address, words: INVENTED });

type Bought = Omit<Extract<ShopCardDraft, { kind: 'acquisition' }>, 'kind' | 'currency' | 'eligible'>;
const bought = (ref: string, draft: Bought): DemoCard => ({ ref, draftOf: () => ({ kind: 'acquisition', currency: 'EUR', eligible: true, ...draft }) });

type Sold = Omit<Extract<ShopCardDraft, { kind: 'sale' }>, 'kind' | 'currency' | 'acquisition'>;
const sold = (of: string, draft: Sold): DemoCard => ({ ref: `${of}-sold`, draftOf: ({ idOf }) => ({ kind: 'sale', currency: 'EUR', acquisition: idOf(of), place: 'DE', ...draft }) });

/** The invented stock book: one piano sold with a margin, one at a loss, one in stock whose seller's address was never written down. @source OWN */
export function demoStockBook(): readonly DemoCard[] {
  return [
    bought('stock1', { number: 1, on: '2025-09-04', invoice: 'A 1', description: 'Upright, 1.24 m, invented, no number', priceMinor: 120_000, details: party('Seller A') }),
    bought('stock2', { number: 2, on: '2025-10-20', invoice: 'A 2', description: 'Grand, 1.60 m, invented, number 0000', priceMinor: 480_000, details: party('Seller B') }),
    sold('stock1', { on: '2026-02-27', invoice: 'V 1', priceMinor: 390_000, details: party('Buyer A', '4 Example Close\n00000 Exampleton') }),
    sold('stock2', { on: '2026-03-30', invoice: 'V 2', priceMinor: 430_000, details: party('Buyer B', '3 Example Square\n00000 Exampleton') }),
    bought('stock3', { number: 3, on: '2026-04-09', invoice: 'A 3', description: 'Grand, 1.88 m, invented, number not found', priceMinor: 650_000, details: party('Seller C', '') }),
  ];
}
