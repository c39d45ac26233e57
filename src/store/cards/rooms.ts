import { type RoomDraft, type RoomGiven, type RoomRecord, roomDraftSchema, roomIssues } from '#workshop';
import type { Issue } from '#result';
import { StoreFailure } from '../bench-store.ts';
import { fitting, stated } from '../check.ts';
import type { Bench } from '../database.ts';
import { cycleAspect } from '../log/aspects.ts';
import { checkCycle, writeAt } from '../write.ts';
import { cardThere, fieldChange } from './card.ts';
import { withdrawing } from './withdraw.ts';

const REFUSED = 'The room cannot be kept as given.';

/** Keeps a room the piano stands in or may stand in. */
export async function addRoom(bench: Bench, id: string, draft: RoomDraft, by: string): Promise<RoomRecord> {
  const wanted = sound(bench, draft);
  return await writeAt(bench, id, by, (sight) => {
    checkCycle(sight, wanted.cycle);
    const room: RoomRecord = { ...wanted, id: bench.newId(), at: sight.at.toISOString() };
    return Promise.resolve({ kind: 'room.added', changes: [{ entity: 'room', place: room.id, before: null, after: room }], rests: [cycleAspect(wanted.cycle, id)], answer: () => room });
  });
}

/** Changes a room; fields left out stay. */
export async function changeRoom(bench: Bench, id: string, roomId: string, change: Partial<RoomDraft>, by: string): Promise<RoomRecord> {
  return await writeAt(bench, id, by, async (sight) => {
    const { id: own, at, ...draft } = await cardThere<RoomRecord>(sight.tx, sight.chain, 'room', roomId);
    const wanted = sound(bench, { ...draft, ...stated(change) });
    checkCycle(sight, wanted.cycle);
    const made = fieldChange('room', roomId, draft, wanted);
    return { kind: 'room.changed', changes: made === undefined ? [] : [made], rests: [cycleAspect(wanted.cycle, id)], answer: () => ({ ...wanted, id: own, at }) };
  });
}

/** Withdraws a room. */
export const withdrawRoom = withdrawing<RoomRecord>('room');

/** A room that fits together, its recordings kept before. */
function sound(bench: Bench, given: unknown): RoomGiven {
  const wanted = fitting(roomDraftSchema, given, REFUSED);
  const unkept = wanted.measured.flatMap(({ sound: hash }, index): readonly Issue[] => (hash === null || bench.recordings.has(hash) ? [] : [{ code: 'unknown', path: `measured[${String(index)}].sound`, given: hash, allowed: 'the hash of a sound file kept before' }]));
  const issues = [...unkept, ...roomIssues(wanted)];
  if (issues.length > 0) throw new StoreFailure('refused', REFUSED, issues);
  return wanted;
}
