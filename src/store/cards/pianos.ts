import { type Instrument, type InstrumentDraft, compassOf, instrumentDraftSchema, keyCountOf } from '#instrument';
import { and, eq, max } from 'drizzle-orm';
import { DEMO, StoreFailure } from '../bench-store.ts';
import { fitting, stated } from '../check.ts';
import type { Bench } from '../database.ts';
import { beginChain } from '../log/chain.ts';
import { ofChain } from '../readings/rows.ts';
import { reading } from '../schema.ts';
import { type Sight, carryOut, writeAt } from '../write.ts';
import { fieldChange } from './card.ts';

/** Takes an instrument in. */
export async function addPiano(bench: Bench, workshopId: string, draft: InstrumentDraft, by: string): Promise<Instrument> {
  const id = bench.newId();
  const instrument: Instrument = { ...fitting(instrumentDraftSchema, draft, 'The instrument cannot be kept as given.'), id, workshopId, cycle: 1, demo: workshopId === DEMO };
  return await bench.db.transaction(async (tx) => {
    const chain = await beginChain(tx, workshopId, id);
    return await carryOut({ tx, chain, at: bench.clock() }, by, {
      kind: 'piano.added',
      changes: [{ entity: 'instrument', place: id, before: null, after: instrument }],
      answer: () => instrument,
    });
  });
}

/** Changes what is said of an instrument; keys on which readings stand stay on the keyboard, and keep their notes. */
export async function changePiano(bench: Bench, id: string, change: Partial<InstrumentDraft>, by: string): Promise<Instrument> {
  return await writeAt(bench, id, by, async (sight) => {
    const { id: _id, workshopId: _workshop, cycle: _cycle, demo: _demo, ...draft } = sight.instrument;
    const wanted = fitting(instrumentDraftSchema, { ...draft, ...stated(change) }, 'The instrument cannot be kept as given.');
    await keepKeys(sight, { ...sight.instrument, ...wanted });
    const made = fieldChange('instrument', id, draft, wanted);
    return { kind: 'piano.changed', changes: made === undefined ? [] : [made], answer: () => ({ ...sight.instrument, ...wanted }) };
  });
}

/** Opens the next stay of an instrument that came back. */
export async function openCycle(bench: Bench, id: string, by: string): Promise<Instrument> {
  return await writeAt(bench, id, by, ({ instrument }) => {
    const cycle = instrument.cycle + 1;
    return Promise.resolve({
      kind: 'cycle.opened',
      changes: [{ entity: 'instrument', place: id, before: { cycle: instrument.cycle }, after: { cycle } }],
      answer: () => ({ ...instrument, cycle }),
    });
  });
}

/** Key numbers count from the first key: once readings stand, it is fixed, and the last key may not fall below them. */
async function keepKeys({ tx, chain, instrument }: Sight, wanted: Instrument): Promise<void> {
  if (wanted.firstMidi === instrument.firstMidi && wanted.lastMidi >= instrument.lastMidi) return;
  const [top] = await tx.select({ key: max(reading.index) }).from(reading).where(and(ofChain(chain), eq(reading.scope, 'key'), eq(reading.standing, true)));
  const key = top?.key ?? 0;
  if (key === 0) return;
  if (wanted.firstMidi !== instrument.firstMidi) {
    const issue = { code: 'conflict', path: 'firstMidi', given: wanted.firstMidi, allowed: `${String(instrument.firstMidi)} while readings stand, since keys are numbered from the first one` } as const;
    throw new StoreFailure('refused', 'Readings stand on keys that would become other notes.', [issue]);
  }
  if (keyCountOf(compassOf(wanted)) >= key) return;
  const min = instrument.firstMidi + key - 1;
  throw new StoreFailure('refused', 'A reading stands on a key that would fall off the keyboard.', [
    { code: 'range', path: 'lastMidi', given: wanted.lastMidi, allowed: `${String(min)} or more, since a reading stands at key ${String(key)}`, params: { min, max: 127 } },
  ]);
}
