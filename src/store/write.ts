import type { Instrument } from '#instrument';
import type { Change, EventKind, LogEvent } from '#workshop';
import { StoreFailure } from './bench-store.ts';
import { cardThere } from './cards/card.ts';
import type { Bench, Transaction } from './database.ts';
import { append } from './log/append.ts';
import { touchedBy, usedBy } from './log/aspects.ts';
import { type Chain, lockChain } from './log/chain.ts';
import { project } from './project.ts';

/** What a writer sees while it decides: nobody else writes at this instrument meanwhile. */
export interface Sight {
  readonly tx: Transaction;
  readonly chain: Chain;
  readonly instrument: Instrument;
  readonly at: Date;
}

/** What a writer decided: one event, none when nothing would change, and what to answer once it stands. */
export interface Decision<T> {
  readonly kind: EventKind;
  readonly changes: readonly Change[];
  /** Aspects it rests on beyond the cards it changes. */
  readonly rests?: readonly string[];
  answer(event: LogEvent | undefined): T | Promise<T>;
}

/** Writes at one instrument: decide, append one event, bring what stands in line, all or nothing. */
export async function writeAt<T>(bench: Bench, id: string, by: string, decide: (sight: Sight) => Promise<Decision<T>>): Promise<T> {
  return await bench.db.transaction(async (tx) => {
    const chain = await lockChain(tx, id);
    const instrument = await cardThere<Instrument>(tx, chain, 'instrument', id);
    const sight = { tx, chain, instrument, at: bench.clock() };
    return await carryOut(sight, by, await decide(sight));
  });
}

/** Appends what was decided and projects it. */
export async function carryOut<T>({ tx, chain, at }: Omit<Sight, 'instrument'>, by: string, decision: Decision<T>): Promise<T> {
  const { kind, changes, rests } = decision;
  if (changes.length === 0) return await decision.answer(undefined);
  const touched = [...new Set(changes.flatMap(touchedBy))];
  const event = await append(tx, chain, { kind, by, at, changes, touched, used: usedBy(changes, chain.instrument, rests) });
  await project(tx, chain, event.seq, changes, true);
  return await decision.answer(event);
}

/** Refuses a cycle the instrument has not come to. */
export function checkCycle({ instrument }: Sight, cycle: number, path = 'cycle'): void {
  if (cycle <= instrument.cycle) return;
  const allowed = `1 to ${String(instrument.cycle)}`;
  throw new StoreFailure('refused', 'The instrument has not been in the shop that often.', [{ code: 'range', path, given: cycle, allowed, params: { min: 1, max: instrument.cycle } }]);
}
