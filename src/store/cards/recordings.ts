import { type Instrument, type KeptRecording, type Recording, type RecordingDraft, compassOf, keyCountOf, recordingDraftSchema } from '#instrument';
import type { Issue } from '#result';
import { StoreFailure } from '../bench-store.ts';
import { fitting, stated } from '../check.ts';
import type { Bench } from '../database.ts';
import { cycleAspect } from '../log/aspects.ts';
import { chainOf } from '../log/chain.ts';
import { type Sight, checkCycle, writeAt } from '../write.ts';
import { cardThere, cardsOf, fieldChange } from './card.ts';
import { withdrawing } from './withdraw.ts';

const REFUSED = 'The recording cannot be kept as given.';
type Wanted = Omit<Recording, 'id' | 'at' | 'by'>;

/** The recordings of an instrument that stand, in the order they came. */
export async function listRecordings({ db }: Bench, id: string): Promise<readonly Recording[]> {
  return await cardsOf<Recording>(db, await chainOf(db, id), 'recording');
}

/** Tells of a sound file that was kept before: whose it is, what was played, where the microphone stood. */
export async function addRecording(bench: Bench, id: string, draft: RecordingDraft, by: string): Promise<Recording> {
  const wanted = fitting(recordingDraftSchema, draft, REFUSED);
  return await writeAt(bench, id, by, (sight) => {
    check(bench, sight, wanted);
    const recording: Recording = { ...wanted, id: bench.newId(), at: sight.at.toISOString(), by };
    return Promise.resolve({
      kind: 'recording.added',
      changes: [{ entity: 'recording', place: recording.id, before: null, after: recording }],
      rests: [cycleAspect(wanted.cycle, id)],
      answer: () => recording,
    });
  });
}

/** Corrects what is told of a recording; fields left out stay, and so does the file itself. */
export async function changeRecording(bench: Bench, id: string, recordingId: string, change: Partial<Omit<RecordingDraft, 'file'>>, by: string): Promise<Recording> {
  return await writeAt(bench, id, by, async (sight) => {
    const { id: own, at, by: keptBy, ...draft } = await cardThere<Recording>(sight.tx, sight.chain, 'recording', recordingId);
    const wanted = fitting(recordingDraftSchema, { ...draft, ...stated(change), file: draft.file }, REFUSED);
    check(bench, sight, wanted);
    const made = fieldChange('recording', recordingId, draft, wanted);
    return { kind: 'recording.changed', changes: made === undefined ? [] : [made], rests: [cycleAspect(wanted.cycle, id)], answer: () => ({ ...wanted, id: own, at, by: keptBy }) };
  });
}

/** Withdraws a recording; its bytes stay. */
export const withdrawRecording = withdrawing<Recording>('recording');

function check(bench: Bench, sight: Sight, wanted: Wanted): void {
  checkCycle(sight, wanted.cycle);
  const issues = [...keyIssues(wanted, sight.instrument), ...unkept(bench, wanted.file, 'file'), ...(wanted.copy === null ? [] : unkept(bench, wanted.copy, 'copy'))];
  if (issues.length > 0) throw new StoreFailure('refused', REFUSED, issues);
}

function unkept({ recordings }: Bench, { hash, byteCount }: KeptRecording, path: string): readonly Issue[] {
  if (!recordings.has(hash)) return [{ code: 'unknown', path: `${path}.hash`, given: hash, allowed: 'the hash of a sound file kept before' }];
  const bytes = recordings.sizeOf(hash);
  return bytes === byteCount ? [] : [{ code: 'conflict', path: `${path}.byteCount`, given: byteCount, allowed: String(bytes) }];
}

function keyIssues({ key }: Wanted, instrument: Instrument): readonly Issue[] {
  const keys = keyCountOf(compassOf(instrument));
  return key === null || key <= keys ? [] : [{ code: 'range', path: 'key', given: key, allowed: `key 1 to ${String(keys)}`, params: { min: 1, max: keys } }];
}
