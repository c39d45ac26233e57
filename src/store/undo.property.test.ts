import type { ReadingEntry } from '#workshop';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SHOP, StoreFailure } from './index.ts';
import { type TestBook, engines } from './testing/engines.ts';

const PLACES = [1, 2, 3] as const;
type Cells = Readonly<Record<number, string>>;

/**
 * What a book should be, thought of in another way than the store does it: each place is a pile of events.
 * Undo takes an event off every pile it lies on, and must find it on top; undoing an undo lays it back,
 * and must find the piles as the undo left them, with no later act that stands having reached back past it.
 */
class Piles {
  readonly #piles = new Map<number, number[]>(PLACES.map((place) => [place, []]));
  readonly #cells = new Map<number, Cells>();
  readonly #undone = new Map<number, { readonly event: number; readonly lay: boolean; readonly tops: ReadonlyMap<number, number | undefined> }>();
  readonly #undoes = new Map<number, number>();

  write(seq: number, cells: Cells): void {
    this.#cells.set(seq, cells);
    for (const place of placesOf(cells)) this.#pile(place).push(seq);
  }

  mayUndo(seq: number): boolean {
    if (!this.#stands(seq)) return false;
    const undone = this.#undone.get(seq);
    if (undone !== undefined) return [...undone.tops].every(([place, top]) => this.#pile(place).at(-1) === top && !this.#reachedPast(seq, place));
    return placesOf(this.#cells.get(seq) ?? {}).every((place) => this.#pile(place).at(-1) === seq);
  }

  undo(seq: number, by: number): void {
    const earlier = this.#undone.get(seq);
    const event = earlier?.event ?? seq;
    const lay = earlier !== undefined && !earlier.lay;
    const places = placesOf(this.#cells.get(event) ?? {});
    for (const place of places) {
      if (lay) this.#pile(place).push(event);
      else this.#pile(place).pop();
    }
    this.#undoes.set(by, seq);
    this.#undone.set(by, { event, lay, tops: new Map(places.map((place) => [place, this.#pile(place).at(-1)])) });
  }

  standing(): Cells {
    const now = PLACES.map((place) => [place, this.#cells.get(this.#pile(place).at(-1) ?? 0)?.[place] ?? ''] as const);
    return Object.fromEntries(now.filter(([, typed]) => typed !== ''));
  }

  /** A standing undo made later of something made earlier, at this place: the piles may look the same again, and are not. */
  #reachedPast(seq: number, place: number): boolean {
    return [...this.#undoes].some(([by, target]) => by > seq && target < seq && this.#stands(by) && this.#undone.get(by)?.tops.has(place) === true);
  }

  /** An event stands unless a standing one undoes it. */
  #stands(seq: number): boolean {
    return ![...this.#undoes].some(([by, undone]) => undone === seq && this.#stands(by));
  }

  #pile(place: number): number[] {
    return this.#piles.get(place) ?? [];
  }
}

function placesOf(cells: Cells): readonly number[] {
  return Object.keys(cells).map(Number);
}

const step = fc.oneof(
  { weight: 2, arbitrary: fc.record({ write: fc.dictionary(fc.constantFrom('1', '2', '3'), fc.constantFrom('48', '49', '50', '51'), { minKeys: 1, maxKeys: 3 }) }) },
  { weight: 3, arbitrary: fc.record({ undo: fc.nat(30) }) },
);

describe.each(engines)('any run of writing and undoing ($name)', ({ open }) => {
  let book: TestBook;
  beforeAll(async () => void (book = await open()));
  afterAll(() => book.remove());

  it('leaves standing what a pile of cards would, refuses what it would, and keeps the chain whole', async () => {
    let refused = 0;
    let redone = 0;
    const run = async (steps: readonly ({ write: Cells } | { undo: number })[]): Promise<void> => {
      const store = book.store();
      const piano = await store.addPiano(SHOP, { name: 'Any', kind: 'grand' }, 'p1');
      const piles = new Piles();
      let head = 1;
      const undos = new Set<number>();
      for (const one of steps) {
        if ('write' in one) {
          const entries = Object.entries(one.write).map(([key, typed]): ReadingEntry => ({ quantity: 'downWeightG', scope: 'key', index: Number(key), typed }));
          ({ seq: head } = await store.writeReadings(piano.id, { cycle: 1, state: 'found', entries }, 'p1'));
          piles.write(head, one.write);
        } else if (head > 1) {
          const seq = 2 + (one.undo % (head - 1));
          const undone = await store.undo(piano.id, seq, 'p1').catch((error: unknown) => error);
          expect(undone instanceof StoreFailure ? undone.reason : 'undone').toBe(piles.mayUndo(seq) ? 'undone' : 'notUndoable');
          if (undone instanceof StoreFailure) refused += 1;
          else {
            head += 1;
            if (undos.has(seq)) redone += 1;
            undos.add(head);
            piles.undo(seq, head);
          }
        }
        const standing = await store.listReadings(piano.id);
        expect(Object.fromEntries(standing.map(({ index, typed }) => [index, typed]))).toEqual(piles.standing());
      }
      expect(await store.audit(piano.id)).toMatchObject({ whole: true, events: head });
    };
    await fc.assert(fc.asyncProperty(fc.array(step, { minLength: 5, maxLength: 25, size: 'max' }), run), { numRuns: 40 });
    expect(Math.min(refused, redone), 'the runs reached refusals and redos').toBeGreaterThan(10);
  });
});
