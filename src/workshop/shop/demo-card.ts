import type { ShopCardDraft } from './records.ts';

/** What cards of the demo may name: its first piano, and those made before by their reference. */
export interface DemoKnown {
  readonly pianoId: string;
  readonly idOf: (ref: string) => string;
}

/** One invented card of the shop; `ref` ties later cards to it. */
export interface DemoCard {
  readonly ref: string;
  readonly draftOf: (known: DemoKnown) => ShopCardDraft;
}
