import type { Bench } from '../database.ts';
import { writeAt } from '../write.ts';
import { cardThere } from './card.ts';

type Withdrawable = 'observation' | 'recording' | 'pass' | 'room' | 'paper' | 'care';

/** Makes the method that withdraws cards of a kind: the log keeps them, what they name stays kept, and undo brings them back. */
export function withdrawing<T extends object>(entity: Withdrawable, read: (body: unknown) => T = (body) => body as T) {
  return async (bench: Bench, id: string, cardId: string, by: string): Promise<T> =>
    await writeAt(bench, id, by, async ({ tx, chain }) => {
      const body = read(await cardThere(tx, chain, entity, cardId));
      return { kind: `${entity}.withdrawn`, changes: [{ entity, place: cardId, before: body, after: null }], answer: () => body };
    });
}
