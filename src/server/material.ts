import type { State } from '#instrument';
import type { ProofMaterial } from '#proof';
import type { SheetMaterial, SheetName } from '#sheets';
import { type BenchStore, SHOP } from '#store';
import { papersToldOf, stayOf, templateInUse, workedSoundsOf } from '#workshop';
import { airOf } from './care-handlers.ts';

/** What comes on top of what is kept: the day of printing and the language. */
type Printing = 'printedAt' | 'locale' | 'say';

/** What the proof of one stay of a piano is made of, as the book has it; the current stay unless another is asked. @throws StoreFailure `notFound`. */
export async function proofSourceOf(store: BenchStore, id: string, asked?: number): Promise<Omit<ProofMaterial, Printing | 'title'>> {
  const piano = await store.getPiano(id);
  const { instrument, head, papers, care } = piano;
  const cycle = asked ?? instrument.cycle;
  const [readings, people, recordings, analyses, { cards }] = await Promise.all([store.listReadings(id, cycle), store.listPeople(SHOP), store.listRecordings(id), store.listAnalyses(id), store.listShopCards()]);
  const { scale: terms, tuning: tuningTerms, ...stay } = stayOf(piano, cycle);
  return { ...stay, papers: papersToldOf(id, papers, cards), terms, tuningTerms, instrument, readings, sounds: workedSoundsOf(recordings, analyses), care: { cards: care, air: await airOf(store, care) }, head, people };
}

/** What a sheet of one stay of a piano is made of, as the book has it; the current stay unless another is asked. The air is read only for the sheets that speak of it. @throws StoreFailure `notFound`. */
export async function sheetSourceOf(store: BenchStore, id: string, { sheet, state, cycle: asked }: { readonly sheet: SheetName; readonly state: State; readonly cycle?: number | undefined }): Promise<Omit<SheetMaterial, Printing>> {
  const piano = await store.getPiano(id);
  const { instrument, head, papers, care: cards, passes } = piano;
  const cycle = asked ?? instrument.cycle;
  const shop = await store.listShopCards();
  const care = sheet === 'owner' || sheet === 'move' ? { cards, passes, air: await airOf(store, cards) } : undefined;
  return { ...stayOf(piano, cycle), instrument, readings: await store.listReadings(id, cycle), state, head, care, survey: templateInUse(instrument, shop.cards)?.points, told: papersToldOf(id, papers, shop.cards) };
}
