import type { Reading, WeighingSession } from '#instrument';
import type { Issue } from '#result';
import { type Change, type SessionReadings, type SessionReadingsAnswer, placeText, sessionReadingsSchema } from '#workshop';
import { StoreFailure } from '../bench-store.ts';
import { cardThere } from '../cards/card.ts';
import { fitting } from '../check.ts';
import type { Bench } from '../database.ts';
import { cycleAspect } from '../log/aspects.ts';
import { writeAt } from '../write.ts';
import { standingById } from './rows.ts';

const REFUSED = 'The readings cannot be put into the session; nothing was written.';

/**
 * Says afterwards how standing readings were weighed, as one event. Each gives way to a reading that differs in its session alone:
 * what was typed, its value, its remark, who measured and when stay, so that a figure does not pass for one weighed anew.
 */
export async function assignReadings(bench: Bench, id: string, sessionId: string, given: SessionReadings, by: string): Promise<SessionReadingsAnswer> {
  const ids = [...new Set(fitting(sessionReadingsSchema, given, REFUSED).readings)];
  return await writeAt(bench, id, by, async ({ tx, chain }) => {
    const session = await cardThere<WeighingSession>(tx, chain, 'session', sessionId);
    const standing = await standingById(tx, chain, ids);
    refuseOthers(ids, standing, session);
    const changes = ids.flatMap((readingId): readonly Change[] => {
      const before = standing.get(readingId);
      if (before === undefined || before.sessionId === sessionId) return [];
      return [{ entity: 'reading', place: placeText(before), before, after: { ...before, id: bench.newId(), sessionId } satisfies Reading }];
    });
    return {
      kind: 'readings.assigned',
      changes,
      rests: [`session/${sessionId}`, cycleAspect(session.cycle, id)],
      answer: (event) => ({ seq: event?.seq ?? chain.seq, readings: changes.map(({ after }) => after as Reading) }),
    };
  });
}

/** A reading somebody replaced meanwhile, of another session, or of another state stays what it is. */
function refuseOthers(ids: readonly string[], standing: ReadonlyMap<string, Reading>, { id, cycle, state }: WeighingSession): void {
  const issues = ids.flatMap((given, index): readonly Issue[] => {
    const reading = standing.get(given);
    const path = `readings[${String(index)}]`;
    if (reading === undefined) return [{ code: 'conflict', path, given, allowed: 'a reading that stands' }];
    if (reading.cycle !== cycle || reading.state !== state) return [{ code: 'conflict', path, given: placeText(reading), allowed: `readings of cycle ${String(cycle)}, state ${state}, as the session` }];
    if (reading.sessionId !== null && reading.sessionId !== id) return [{ code: 'conflict', path, given: `${placeText(reading)} of session ${reading.sessionId}`, allowed: 'readings that belong to no session' }];
    return [];
  });
  if (issues.length > 0) throw new StoreFailure('conflict', REFUSED, issues);
}
