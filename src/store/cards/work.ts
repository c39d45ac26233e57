import { type Instrument, compassOf, isQuantityName, keyCountOf, quantityNames } from '#instrument';
import type { Issue } from '#result';
import { type Answer, type Estimate, type ExpectedReadings, type WorkChange, type WorkItem, type WorkItemDraft, readingBatchSchema, workChangeSchema, workItemDraftSchema, workItemSchema } from '#workshop';
import { and, asc, eq, or, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/pg-core';
import { z } from 'zod';
import { StoreFailure } from '../bench-store.ts';
import { fitting } from '../check.ts';
import type { Bench, Transaction } from '../database.ts';
import { cycleAspect } from '../log/aspects.ts';
import { readingChanges } from '../readings/write.ts';
import { card } from '../schema.ts';
import { checkCycle, writeAt } from '../write.ts';
import { cardsOf, fieldChange } from './card.ts';

const REFUSED = 'The work cannot be kept as given.';
const draftsSchema = z.array(workItemDraftSchema).min(1).max(1000);

/** Puts jobs on the work list, with the readings expected once they are done where those are given, as one event. */
export async function addWork(bench: Bench, id: string, drafts: readonly WorkItemDraft[], by: string, expected?: ExpectedReadings): Promise<readonly WorkItem[]> {
  const wanted = fitting(draftsSchema, drafts, REFUSED);
  const batch = expected === undefined ? undefined : fitting(readingBatchSchema, { ...expected, state: 'planned' }, REFUSED);
  return await writeAt(bench, id, by, async (sight) => {
    wanted.forEach(({ cycle }, index) => { checkCycle(sight, cycle, `[${String(index)}].cycle`); });
    const issues = wanted.flatMap((draft, index) => misplaced(draft, sight.instrument, `[${String(index)}]`));
    if (issues.length > 0) throw new StoreFailure('refused', REFUSED, issues);
    const items = wanted.map((draft): WorkItem => ({ ...draft, id: bench.newId(), inHand: false, waits: null, status: 'open', doneAt: null }));
    const readings = batch === undefined ? { changes: [], rests: [] } : await readingChanges(bench, sight, batch, by);
    return {
      kind: 'work.added',
      changes: [...items.map((item) => ({ entity: 'work' as const, place: item.id, before: null, after: item })), ...readings.changes],
      rests: [...wanted.map(({ cycle }) => cycleAspect(cycle, id)), ...readings.rests],
      answer: () => items,
    };
  });
}

/** Ticks a job off, drops it, takes it up or in hand, says what it waits for, or remarks on it. */
export async function changeWork(bench: Bench, id: string, workId: string, change: WorkChange, by: string): Promise<WorkItem> {
  const [item] = await changeJobs(bench, id, [workId], change, by);
  return item ?? noJob(workId);
}

/** Changes several jobs alike, as one event. */
export async function changeJobs(bench: Bench, id: string, workIds: readonly string[], change: WorkChange, by: string): Promise<readonly WorkItem[]> {
  const wanted = fitting(workChangeSchema, change, REFUSED);
  return await writeAt(bench, id, by, async ({ tx, chain, at }) => {
    if (wanted.waits?.purchase != null) await refuseUnlessOrdered(tx, chain.workshop, wanted.waits.purchase);
    // A job kept by an earlier version does not state what could not be stated then.
    const known = new Map((await cardsOf<WorkItem>(tx, chain, 'work')).map((item) => [item.id, workItemSchema.parse(item)]));
    const pairs = [...new Set(workIds)].map((workId) => {
      const item = known.get(workId) ?? noJob(workId);
      return { item, after: changedJob(item, wanted, at) };
    });
    const changes = pairs.flatMap(({ item, after }) => fieldChange('work', item.id, item, after) ?? []);
    return { kind: 'work.changed', changes, rests: wanted.waits?.purchase == null ? [] : [`shop/${wanted.waits.purchase}`], answer: () => pairs.map(({ after }) => after) };
  });
}

function changedJob(item: WorkItem, wanted: z.output<typeof workChangeSchema>, at: Date): WorkItem {
  const { status = item.status, remark = item.remark, inHand = item.inHand, waits = item.waits } = wanted;
  const doneAt = status === item.status ? item.doneAt : status === 'done' ? at.toISOString() : null;
  return { ...item, status, doneAt, remark, inHand, waits };
}

function noJob(workId: string): never {
  throw new StoreFailure('notFound', `There is no work ${workId}.`);
}

async function refuseUnlessOrdered(tx: Transaction, workshop: string, purchase: string): Promise<void> {
  const [row] = await tx.select({ body: card.body }).from(card).where(and(eq(card.workshop, workshop), eq(card.entity, 'shop'), eq(card.place, purchase), eq(card.standing, true)));
  if (row?.body['kind'] === 'purchase') return;
  throw new StoreFailure('refused', REFUSED, [{ code: 'unknown', path: 'waits.purchase', given: purchase, allowed: 'the id of an order in the book', params: { reason: 'purchase' } }]);
}

/** How long what is done stays in view at the bench. */
const DONE_FOR_MS = 14 * 86_400_000;

/** Pianos with jobs to do, or done of late, in their current stay: those jobs, and the estimate. */
export async function getBench({ db, clock }: Bench): Promise<Answer<'getBench'>> {
  const since = new Date(clock().getTime() - DONE_FOR_MS).toISOString();
  const instrument = alias(card, 'instrument');
  const estimate = alias(card, 'estimate');
  const rows = await db.select({ work: card.body, instrument: instrument.body, estimate: estimate.body }).from(card)
    .innerJoin(instrument, and(eq(instrument.workshop, card.workshop), eq(instrument.instrument, card.instrument), eq(instrument.entity, 'instrument'), eq(instrument.standing, true), sql`(${instrument.body}->>'cycle') = (${card.body}->>'cycle')`))
    .leftJoin(estimate, and(eq(estimate.workshop, card.workshop), eq(estimate.instrument, card.instrument), eq(estimate.entity, 'estimate'), eq(estimate.standing, true), sql`${estimate.place} = 'c' || (${card.body}->>'cycle')`))
    .where(and(eq(card.entity, 'work'), eq(card.standing, true), or(sql`${card.body}->>'status' = 'open'`, sql`${card.body}->>'status' = 'done' and ${card.body}->>'doneAt' >= ${since}`)))
    .orderBy(asc(card.workshop), asc(card.instrument), asc(card.madeSeq), asc(card.madeIndex));
  const pianos = new Map<string, Answer<'getBench'>['pianos'][number]>();
  for (const row of rows) {
    const piano = row.instrument as Instrument;
    const standing = pianos.get(piano.id) ?? { instrument: piano, work: [], estimate: row.estimate as Estimate | null };
    standing.work.push(workItemSchema.parse(row.work));
    pianos.set(piano.id, standing);
  }
  return { pianos: [...pianos.values()] };
}

function misplaced(draft: { readonly key: number | null; readonly remeasure: readonly string[] }, instrument: Instrument, path: string): readonly Issue[] {
  const keys = keyCountOf(compassOf(instrument));
  const key: readonly Issue[] =
    draft.key === null || draft.key <= keys ? [] : [{ code: 'range', path: `${path}.key`, given: draft.key, allowed: `key 1 to ${String(keys)}`, params: { min: 1, max: keys } }];
  const unknown = draft.remeasure.flatMap((name, index): readonly Issue[] =>
    isQuantityName(name) ? [] : [{ code: 'choice', path: `${path}.remeasure[${String(index)}]`, given: name, allowed: `one of ${quantityNames.join(', ')}` }],
  );
  return [...key, ...unknown];
}
