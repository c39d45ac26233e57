import type { Change, LogEvent, ShopKind } from '#workshop';
import { bookOf } from '#workshop';
import { sayMaybe } from '../language/say-maybe.ts';
import { sayNow } from '../language/use-say.ts';
import { lastChain } from '../undo/undo-stack.ts';
import { undoLast } from '../undo/undo.ts';

/** The chains of the shop: its own book and the demonstration's. */
export const BOOKS: readonly string[] = [bookOf('shop'), bookOf('demo')];

/** Undoes the last step this window took at any of some chains: books of the shop, and pianos whose jobs a page of the shop shows. */
export function undoInShop(chains: readonly string[] = BOOKS): void {
  undoLast(lastChain(chains) ?? bookOf('shop'), sayShopEvent);
}

/** An event of the shop in words: which kind of card, and which of its fields. What is personal is not in it. */
function sayShopEvent({ changes, undoes }: LogEvent): string {
  const say = sayNow();
  const what = [...new Set(changes.map(sayShopChange))].join('; ');
  return undoes === null ? what : say('shop.event.undone', { seq: undoes, what });
}

function sayShopChange({ entity, before, after }: Change): string {
  const say = sayNow();
  if (entity === 'work') return say('shop.event.job');
  if (entity === 'estimate') return say('shop.event.estimate');
  const kindIn = (body: unknown): string => {
    const { kind } = (body ?? {}) as { readonly kind?: ShopKind };
    return kind === undefined ? say('shop.kind.card') : say(`shop.kind.${kind}`);
  };
  if (before === null) return say('shop.event.added', { kind: kindIn(after) });
  if (after === null) return say('shop.event.withdrawn', { kind: kindIn(before) });
  const what = Object.keys(after as object).map((field) => sayMaybe(say, field === 'details' ? 'shop.field.details.words' : `shop.field.${field}`)).join(', ');
  return say('shop.event.changed', { kind: kindIn(after), what });
}
