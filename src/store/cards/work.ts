import { type Instrument, compassOf, isQuantityName, keyCountOf, quantityNames } from '#instrument';
import type { Issue } from '#result';
import { type ExpectedReadings, type WorkItem, type WorkItemDraft, readingBatchSchema, workItemDraftSchema, workItemSchema } from '#workshop';
import { z } from 'zod';
import { StoreFailure } from '../bench-store.ts';
import { fitting } from '../check.ts';
import type { Bench } from '../database.ts';
import { cycleAspect } from '../log/aspects.ts';
import { readingChanges } from '../readings/write.ts';
import { checkCycle, writeAt } from '../write.ts';
import { cardThere, fieldChange } from './card.ts';

const REFUSED = 'The work cannot be kept as given.';
const draftsSchema = z.array(workItemDraftSchema).min(1).max(1000);
const changeSchema = z.strictObject({ status: workItemSchema.shape.status.optional(), remark: z.string().max(2000).optional() });

/** Puts jobs on the work list, with the readings expected once they are done where those are given, as one event. */
export async function addWork(bench: Bench, id: string, drafts: readonly WorkItemDraft[], by: string, expected?: ExpectedReadings): Promise<readonly WorkItem[]> {
  const wanted = fitting(draftsSchema, drafts, REFUSED);
  const batch = expected === undefined ? undefined : fitting(readingBatchSchema, { ...expected, state: 'planned' }, REFUSED);
  return await writeAt(bench, id, by, async (sight) => {
    wanted.forEach(({ cycle }, index) => { checkCycle(sight, cycle, `[${String(index)}].cycle`); });
    const issues = wanted.flatMap((draft, index) => misplaced(draft, sight.instrument, `[${String(index)}]`));
    if (issues.length > 0) throw new StoreFailure('refused', REFUSED, issues);
    const items = wanted.map((draft): WorkItem => ({ ...draft, id: bench.newId(), status: 'open', doneAt: null }));
    const readings = batch === undefined ? { changes: [], rests: [] } : await readingChanges(bench, sight, batch, by);
    return {
      kind: 'work.added',
      changes: [...items.map((item) => ({ entity: 'work' as const, place: item.id, before: null, after: item })), ...readings.changes],
      rests: [...wanted.map(({ cycle }) => cycleAspect(cycle, id)), ...readings.rests],
      answer: () => items,
    };
  });
}

/** Ticks a job off, drops it, takes it up again, or remarks on it. */
export async function changeWork(bench: Bench, id: string, workId: string, change: { status?: WorkItem['status']; remark?: string }, by: string): Promise<WorkItem> {
  const wanted = fitting(changeSchema, change, REFUSED);
  return await writeAt(bench, id, by, async ({ tx, chain, at }) => {
    const item = await cardThere<WorkItem>(tx, chain, 'work', workId);
    const status = wanted.status ?? item.status;
    const doneAt = status === item.status ? item.doneAt : status === 'done' ? at.toISOString() : null;
    const after: WorkItem = { ...item, status, doneAt, remark: wanted.remark ?? item.remark };
    const made = fieldChange('work', workId, item, after);
    return { kind: 'work.changed', changes: made === undefined ? [] : [made], answer: () => after };
  });
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
