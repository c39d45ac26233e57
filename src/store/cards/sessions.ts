import { type SessionDraft, type WeighingSession, sessionDraftSchema } from '#instrument';
import { and, eq } from 'drizzle-orm';
import { StoreFailure } from '../bench-store.ts';
import { fitting, stated } from '../check.ts';
import type { Bench } from '../database.ts';
import { cycleAspect } from '../log/aspects.ts';
import { ofChain } from '../readings/rows.ts';
import { reading } from '../schema.ts';
import { type Sight, checkCycle, writeAt } from '../write.ts';
import { cardThere, fieldChange } from './card.ts';

const REFUSED = 'The weighing session cannot be kept as given.';

/** Begins a weighing session. */
export async function addSession(bench: Bench, id: string, draft: SessionDraft, by: string): Promise<WeighingSession> {
  const wanted = fitting(sessionDraftSchema, draft, REFUSED);
  return await writeAt(bench, id, by, (sight) => {
    checkCycle(sight, wanted.cycle);
    const session: WeighingSession = { ...wanted, id: bench.newId(), startedAt: sight.at.toISOString() };
    return Promise.resolve({
      kind: 'session.added',
      changes: [{ entity: 'session', place: session.id, before: null, after: session }],
      rests: [cycleAspect(wanted.cycle, id)],
      answer: () => session,
    });
  });
}

/** Changes how a session is said to have been weighed; its cycle and state are fixed once readings belong to it. */
export async function changeSession(bench: Bench, id: string, sessionId: string, change: Partial<SessionDraft>, by: string): Promise<WeighingSession> {
  return await writeAt(bench, id, by, async (sight) => {
    const session = await cardThere<WeighingSession>(sight.tx, sight.chain, 'session', sessionId);
    const { id: _id, startedAt: _startedAt, ...draft } = session;
    const wanted = fitting(sessionDraftSchema, { ...draft, ...stated(change) }, REFUSED);
    checkCycle(sight, wanted.cycle);
    await keepState(sight, session, wanted);
    const made = fieldChange('session', sessionId, draft, wanted);
    return { kind: 'session.changed', changes: made === undefined ? [] : [made], rests: [cycleAspect(wanted.cycle, id)], answer: () => ({ ...session, ...wanted }) };
  });
}

async function keepState({ tx, chain }: Sight, session: WeighingSession, wanted: { readonly cycle: number; readonly state: string }): Promise<void> {
  const path = wanted.cycle !== session.cycle ? 'cycle' : wanted.state !== session.state ? 'state' : undefined;
  if (path === undefined) return;
  const [belonging] = await tx.select({ id: reading.id }).from(reading).where(and(ofChain(chain), eq(reading.sessionId, session.id))).limit(1);
  if (belonging === undefined) return;
  throw new StoreFailure('refused', REFUSED, [{ code: 'conflict', path, given: wanted[path], allowed: `${String(session[path])}, since readings belong to the session` }]);
}
