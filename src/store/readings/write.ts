import type { Reading, WeighingSession } from '#instrument';
import { type Issue, showGiven } from '#result';
import { type Change, type ReadingBatch, type ReadingBatchAnswer, readingBatchSchema } from '#workshop';
import { StoreFailure } from '../bench-store.ts';
import { cardAt } from '../cards/card.ts';
import { accepted, fitting } from '../check.ts';
import type { Bench } from '../database.ts';
import { cycleAspect } from '../log/aspects.ts';
import { type Decision, type Sight, checkCycle, writeAt } from '../write.ts';
import { answeredBefore, keepAnswer } from './sends.ts';
import { standingAt } from './rows.ts';
import { type Batch, type Understood, understandBatch } from './understand.ts';

const REFUSED = 'The readings cannot be kept as given; nothing was written.';

/** Writes a batch of cells as one event, or not at all. A batch sent again is answered as before. */
export async function writeReadings(bench: Bench, id: string, given: ReadingBatch, by: string): Promise<ReadingBatchAnswer> {
  const batch = fitting(readingBatchSchema, given, REFUSED);
  return await writeAt(bench, id, by, async (sight) => {
    const before = await answeredBefore(sight, batch);
    if (before !== undefined) return { kind: 'readings.written', changes: [], answer: () => before };
    return await decide(bench, sight, batch, by);
  });
}

/** What a batch changes and rests on, and how its figures were understood; for an event of its own, or as part of another. */
export async function readingChanges(bench: Bench, sight: Sight, batch: Batch, by: string): Promise<Required<Pick<Decision<never>, 'changes' | 'rests'>> & { readonly cells: readonly Understood[] }> {
  checkCycle(sight, batch.cycle);
  await checkSession(sight, batch);
  const cells = accepted(understandBatch(batch, sight.instrument), REFUSED);
  const standing = await standingAt(sight.tx, sight.chain, cells.map(({ placeText }) => placeText));
  refuseConflicts(cells, standing);
  const changes = cells.flatMap((cell) => changeAt(cell, standing.get(cell.placeText) ?? null, { id: bench.newId(), sessionId: batch.sessionId, at: sight.at.toISOString(), by, ...(batch.typedAt === undefined ? {} : { typedAt: new Date(batch.typedAt).toISOString() }) }));
  const { id } = sight.instrument;
  const session = batch.sessionId === null ? [] : [`session/${batch.sessionId}`];
  const keyed = cells.some(({ place }) => place.scope === 'key') ? [`instrument/${id}/firstMidi`, `instrument/${id}/lastMidi`] : [];
  return { cells, changes, rests: [...session, ...keyed, cycleAspect(batch.cycle, id)] };
}

async function decide(bench: Bench, sight: Sight, batch: Batch, by: string): Promise<Decision<ReadingBatchAnswer>> {
  const { cells, changes, rests } = await readingChanges(bench, sight, batch, by);
  return {
    kind: 'readings.written', changes, rests,
    answer: async (event) => {
      const readings = changes.flatMap(({ after }) => (after === null ? [] : [after as Reading]));
      const warnings = cells.flatMap(({ warning }) => (warning === undefined ? [] : [warnable(warning)]));
      const answer = { seq: event?.seq ?? sight.chain.seq, readings, warnings };
      await keepAnswer(sight, batch, answer);
      return answer;
    },
  };
}

/** A new reading takes the place; clearing one where nothing stands changes nothing. */
function changeAt(cell: Understood, before: Reading | null, made: Pick<Reading, 'id' | 'sessionId' | 'at' | 'typedAt' | 'by'>): readonly Change[] {
  const { place, entry, figure } = cell;
  if (figure === null) return before === null ? [] : [{ entity: 'reading', place: cell.placeText, before, after: null }];
  const after: Reading = { ...place, ...figure, ...made, uncertainty: null, basis: entry.basis ?? 'measured', remark: entry.remark ?? '' };
  return [{ entity: 'reading', place: cell.placeText, before, after }];
}

/** A writer who says what it saw is refused where something else stands by now: nobody's figure is overwritten unseen. */
function refuseConflicts(cells: readonly Understood[], standing: ReadonlyMap<string, Reading>): void {
  const issues = cells.flatMap(({ path, placeText, entry }): readonly Issue[] => {
    const now = standing.get(placeText);
    if (entry.basedOn === undefined || entry.basedOn === (now?.id ?? null)) return [];
    const stands = now === undefined ? 'nothing' : `${now.typed ?? now.outcome ?? ''} (${now.at}, reading ${now.id})`;
    return [{ code: 'conflict', path: `${path}.basedOn`, given: entry.typed ?? entry.outcome ?? 'clear', allowed: `based on what stands at ${placeText}: ${stands}`, params: { place: placeText, stands, basedOn: showGiven(entry.basedOn) } }];
  });
  if (issues.length > 0) throw new StoreFailure('conflict', 'Something else stands there by now; nothing was written.', issues);
}

async function checkSession({ tx, chain }: Sight, { sessionId, cycle, state }: Batch): Promise<void> {
  if (sessionId === null) return;
  const session = await cardAt<WeighingSession>(tx, chain, 'session', sessionId);
  const refuse = (allowed: string): never => {
    throw new StoreFailure('refused', REFUSED, [{ code: session === undefined ? 'unknown' : 'conflict', path: 'sessionId', given: sessionId, allowed }]);
  };
  if (session === undefined) return refuse('a weighing session of this instrument, or null');
  if (session.cycle !== cycle || session.state !== state) {
    refuse(`a session of cycle ${String(cycle)}, state ${state}; this one is of cycle ${String(session.cycle)}, state ${session.state}`);
  }
}

/** A warning in the form the answer carries. */
function warnable({ code, path, given, allowed, params }: Issue): ReadingBatchAnswer['warnings'][number] {
  return { code, path, given, allowed, ...(params === undefined ? {} : { params: { ...params } }) };
}
