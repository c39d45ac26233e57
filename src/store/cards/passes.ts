import { type TuningPass, type TuningPassDraft, tuningPassDraftSchema } from '#instrument';
import type { Answer } from '#workshop';
import { and, asc, eq } from 'drizzle-orm';
import { fitting, stated } from '../check.ts';
import type { Bench } from '../database.ts';
import { cycleAspect } from '../log/aspects.ts';
import { chainOf } from '../log/chain.ts';
import { card } from '../schema.ts';
import { checkCycle, writeAt } from '../write.ts';
import { cardThere, fieldChange } from './card.ts';
import { withdrawing } from './withdraw.ts';

const REFUSED = 'The pass cannot be kept as given.';

/** Keeps one pass over the strings. */
export async function addPass(bench: Bench, id: string, draft: TuningPassDraft, by: string): Promise<TuningPass> {
  const wanted = fitting(tuningPassDraftSchema, draft, REFUSED);
  return await writeAt(bench, id, by, (sight) => {
    checkCycle(sight, wanted.cycle);
    const pass: TuningPass = { ...wanted, id: bench.newId(), at: sight.at.toISOString() };
    return Promise.resolve({ kind: 'pass.added', changes: [{ entity: 'pass', place: pass.id, before: null, after: pass }], rests: [cycleAspect(wanted.cycle, id)], answer: () => pass });
  });
}

/** Corrects a pass; fields left out stay. */
export async function changePass(bench: Bench, id: string, passId: string, change: Partial<TuningPassDraft>, by: string): Promise<TuningPass> {
  return await writeAt(bench, id, by, async (sight) => {
    const { id: own, at, ...draft } = await cardThere<TuningPass>(sight.tx, sight.chain, 'pass', passId);
    const wanted = fitting(tuningPassDraftSchema, { ...draft, ...stated(change) }, REFUSED);
    checkCycle(sight, wanted.cycle);
    const made = fieldChange('pass', passId, draft, wanted);
    return { kind: 'pass.changed', changes: made === undefined ? [] : [made], rests: [cycleAspect(wanted.cycle, id)], answer: () => ({ ...wanted, id: own, at }) };
  });
}

/** Withdraws a pass. */
export const withdrawPass = withdrawing<TuningPass>('pass');

/** Standing passes of every instrument in the workshop of this one, in the order they were noted. */
export async function listShopPasses({ db }: Bench, id: string): Promise<Answer<'listShopPasses'>['passes']> {
  const { workshop } = await chainOf(db, id);
  const rows = await db.select({ instrument: card.instrument, body: card.body }).from(card)
    .where(and(eq(card.workshop, workshop), eq(card.entity, 'pass'), eq(card.standing, true))).orderBy(asc(card.instrument), asc(card.madeSeq), asc(card.madeIndex));
  return rows.map(({ instrument, body }) => ({ ...(body as TuningPass), pianoId: instrument }));
}
