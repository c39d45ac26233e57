import { type Instrument, type Reading, type State, isQuantityName } from '#instrument';
import type { Answer } from '#workshop';
import { and, desc, eq } from 'drizzle-orm';
import { cardThere } from '../cards/card.ts';
import type { Bench } from '../database.ts';
import { chainOf } from '../log/chain.ts';
import { reading } from '../schema.ts';
import { ofChain, readingOf, standingReadings } from './rows.ts';

/** Standing readings, all states, of one cycle. */
export async function listReadings({ db }: Bench, id: string, cycle?: number): Promise<readonly Reading[]> {
  const chain = await chainOf(db, id);
  const instrument = await cardThere<Instrument>(db, chain, 'instrument', id);
  return await standingReadings(db, chain, cycle ?? instrument.cycle);
}

/** Every reading ever kept at one place, all repeats, newest first. */
export async function readingHistory({ db }: Bench, id: string, place: { cycle: number; state: State; quantity: string; index: number }): Promise<Answer<'readingHistory'>['readings']> {
  const chain = await chainOf(db, id);
  const { cycle, state, quantity, index } = place;
  if (!isQuantityName(quantity)) return [];
  const rows = await db.select().from(reading)
    .where(and(ofChain(chain), eq(reading.cycle, cycle), eq(reading.state, state), eq(reading.quantity, quantity), eq(reading.index, index)))
    .orderBy(desc(reading.seq), desc(reading.repeat));
  return rows.map((row) => ({ ...readingOf(row), standing: row.standing, withdrawn: row.withdrawn }));
}
