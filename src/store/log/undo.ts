import { type Change, type LogEvent, finalKinds } from '#workshop';
import { and, desc, eq, gt, isNull, lt, or, sql } from 'drizzle-orm';
import { StoreFailure } from '../bench-store.ts';
import type { Bench, Transaction } from '../database.ts';
import { project } from '../project.ts';
import { event } from '../schema.ts';
import { append } from './append.ts';
import { touchedBy } from './aspects.ts';
import { type Chain, lockChain } from './chain.ts';
import { readText } from './event-text.ts';

type Row = typeof event.$inferSelect;

/** Takes an event back whole, by an event of its own; an undo can be taken back the same way. */
export async function undo(bench: Bench, id: string, seq: number, by: string): Promise<LogEvent> {
  return await bench.db.transaction(async (tx) => {
    const chain = await lockChain(tx, id);
    const target = await eventAt(tx, chain, seq);
    if (target === undefined) throw new StoreFailure('notFound', `There is no event ${String(seq)}.`);
    refuseFinal(target);
    await refuseUndo(tx, chain, target);
    const changes = readText(target.text).changes.map(reversed);
    const undone = await append(tx, chain, { kind: 'undone', by, at: bench.clock(), changes, touched: target.touched, used: target.used, undoes: seq });
    await markUndone(tx, chain, target, undone.seq);
    await project(tx, chain, undone.seq, changes, false);
    return undone;
  });
}

/** What went out of the house stands: a quote that was sent, and what was answered. */
function refuseFinal({ seq, text }: Row): void {
  const { kind } = readText(text);
  if (!finalKinds.includes(kind)) return;
  throw new StoreFailure('notUndoable', `Event ${String(seq)} cannot be undone: ${kind} stands for good.`, [{ code: 'conflict', path: 'seq', given: seq, allowed: 'an event that nobody outside the shop was told of', params: { seq, reason: 'final' } }]);
}

function reversed({ entity, place, before, after }: Change): Change {
  return { entity, place, before: after, after: before };
}

/** Only what no later event changed or built on can be taken back; the refusal names that event and the place. */
async function refuseUndo(tx: Transaction, chain: Chain, target: Row): Promise<void> {
  const refuse = (later: number, place: string, why: string): never => {
    const issue = { code: 'conflict', path: 'seq', given: target.seq, allowed: `after event ${String(later)} is undone: it ${why}`, params: { seq: target.seq, later, place } } as const;
    throw new StoreFailure('notUndoable', `Event ${String(target.seq)} cannot be undone: event ${String(later)} ${why}.`, [issue]);
  };
  if (target.undoneBy !== null) refuse(target.undoneBy, '', 'undid it already');
  const later = await laterAt(tx, chain, target);
  if (later === undefined) return;
  const place = meeting(target, later);
  refuse(later.seq, place, `came later and builds on ${place}`);
}

/**
 * The last standing event after the target that meets its aspects. What was undone after the target does not count,
 * nor does the undo of an event that itself came after the target: the two cancel.
 */
async function laterAt(tx: Transaction, chain: Chain, target: Row): Promise<Row | undefined> {
  const touched = sql`${sql.param(target.touched)}::text[]`;
  const used = sql`${sql.param(target.used)}::text[]`;
  const [later] = await tx.select().from(event)
    .where(and(
      eq(event.workshop, chain.workshop), eq(event.instrument, chain.instrument), gt(event.seq, target.seq), isNull(event.undoneBy),
      or(isNull(event.undoes), lt(event.undoes, target.seq)),
      sql`(${event.touched} && ${touched} or ${event.used} && ${touched} or ${event.touched} && ${used})`,
    ))
    .orderBy(desc(event.seq)).limit(1);
  return later;
}

/** The place two events meet at, as the log writes it. */
function meeting(target: Row, later: Row): string {
  const touched = new Set(target.touched);
  const used = new Set(target.used);
  const aspect = [...later.touched, ...later.used].find((name) => touched.has(name)) ?? later.touched.find((name) => used.has(name)) ?? '';
  const place = readText(later.text).changes.find((change) => touchedBy(change).includes(aspect))?.place;
  return place ?? aspect.slice(aspect.indexOf('/') + 1);
}

/** Marks an event as undone. If it was itself an undo, what it had taken back stands again, and so on down the line. */
async function markUndone(tx: Transaction, chain: Chain, target: Row, undoneBy: number | null): Promise<void> {
  await tx.update(event).set({ undoneBy }).where(and(eq(event.workshop, chain.workshop), eq(event.instrument, chain.instrument), eq(event.seq, target.seq)));
  if (target.undoes === null) return;
  const before = await eventAt(tx, chain, target.undoes);
  if (before !== undefined) await markUndone(tx, chain, before, undoneBy === null ? target.seq : null);
}

async function eventAt(tx: Transaction, chain: Chain, seq: number): Promise<Row | undefined> {
  const [row] = await tx.select().from(event).where(and(eq(event.workshop, chain.workshop), eq(event.instrument, chain.instrument), eq(event.seq, seq)));
  return row;
}
