import { type Answer, type Estimate, type EstimateDraft, canonicalJson, estimateIssues, estimateSchema } from '#workshop';
import { and, asc, eq } from 'drizzle-orm';
import { StoreFailure } from '../bench-store.ts';
import { fitting } from '../check.ts';
import type { Bench } from '../database.ts';
import { cycleAspect } from '../log/aspects.ts';
import { chainOf } from '../log/chain.ts';
import { card } from '../schema.ts';
import { checkCycle, writeAt } from '../write.ts';
import { cardAt } from './card.ts';

const REFUSED = 'The estimate cannot be kept as given.';

/** Keeps what the job of one stay is reckoned to take and cost, whole, as one event; the same again is none. */
export async function setEstimate(bench: Bench, id: string, cycle: number, draft: EstimateDraft, by: string): Promise<Estimate> {
  const wanted = fitting(estimateSchema, draft, REFUSED);
  const issues = estimateIssues(wanted);
  if (issues.length > 0) throw new StoreFailure('refused', REFUSED, issues);
  return await writeAt(bench, id, by, async (sight) => {
    checkCycle(sight, cycle);
    const place = `c${String(cycle)}`;
    const before = (await cardAt<Estimate>(sight.tx, sight.chain, 'estimate', place)) ?? null;
    const same = before !== null && canonicalJson(before) === canonicalJson(wanted);
    return { kind: 'estimate.set', changes: same ? [] : [{ entity: 'estimate', place, before, after: wanted }], rests: [cycleAspect(cycle, id)], answer: () => wanted };
  });
}

/** Standing estimates of every instrument in the workshop of this one, in the order they were first made. */
export async function listShopEstimates({ db }: Bench, id: string): Promise<Answer<'listShopEstimates'>['estimates']> {
  const { workshop } = await chainOf(db, id);
  const rows = await db.select({ instrument: card.instrument, place: card.place, body: card.body }).from(card)
    .where(and(eq(card.workshop, workshop), eq(card.entity, 'estimate'), eq(card.standing, true))).orderBy(asc(card.instrument), asc(card.madeSeq), asc(card.madeIndex));
  return rows.map(({ instrument, place, body }) => ({ pianoId: instrument, cycle: Number(place.slice(1)), estimate: body as Estimate }));
}
