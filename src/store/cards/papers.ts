import { type PaperChange, type PaperDraft, type PaperGiven, type PaperRecord, paperDraftSchema, paperIssues, paperRecordSchema } from '#workshop';
import type { Issue } from '#result';
import { StoreFailure } from '../bench-store.ts';
import { fitting, stated } from '../check.ts';
import type { Bench } from '../database.ts';
import { unkeptPhotos } from '../photos.ts';
import { type Sight, writeAt } from '../write.ts';
import { cardThere, cardsOf, fieldChange } from './card.ts';
import { withdrawing } from './withdraw.ts';

const REFUSED = 'The record cannot be kept as given.';

/** Keeps a material of the instrument, or what is proven of its history. */
export async function addPaper(bench: Bench, id: string, draft: PaperDraft, by: string): Promise<PaperRecord> {
  const wanted = fitting(paperDraftSchema, draft, REFUSED);
  return await writeAt(bench, id, by, async (sight) => {
    refuseIf([...checked(bench, wanted), ...(await secondHistory(sight, wanted))]);
    const record: PaperRecord = { ...wanted, id: bench.newId(), at: sight.at.toISOString() };
    return { kind: 'paper.added', changes: [{ entity: 'paper', place: record.id, before: null, after: record }], answer: () => record };
  });
}

/** Corrects a record; fields left out stay. */
export async function changePaper(bench: Bench, id: string, recordId: string, change: PaperChange, by: string): Promise<PaperRecord> {
  return await writeAt(bench, id, by, async ({ tx, chain }) => {
    const { id: own, at, ...known } = paperRecordSchema.parse(await cardThere<PaperRecord>(tx, chain, 'paper', recordId));
    if (change.kind !== known.kind) refuseIf([{ code: 'choice', path: 'kind', given: change.kind, allowed: known.kind, params: { choices: known.kind } }]);
    const wanted = fitting(paperDraftSchema, { ...known, ...stated(change) }, REFUSED);
    refuseIf(checked(bench, wanted));
    const made = fieldChange('paper', recordId, known, wanted);
    return { kind: 'paper.changed', changes: made === undefined ? [] : [made], answer: () => ({ ...wanted, id: own, at }) };
  });
}

/** Withdraws a record. */
export const withdrawPaper = withdrawing<PaperRecord>('paper');

function refuseIf(issues: readonly Issue[]): void {
  if (issues.length > 0) throw new StoreFailure('refused', REFUSED, issues);
}

/** What does not fit together, and photos that were not kept. */
function checked(bench: Bench, wanted: PaperGiven): readonly Issue[] {
  return [...paperIssues(wanted), ...unkeptPhotos(bench, wanted.kind === 'material' ? wanted.photos : [])];
}

/** An instrument has one history: the one that stands is changed. */
async function secondHistory({ tx, chain }: Sight, wanted: PaperGiven): Promise<readonly Issue[]> {
  if (wanted.kind !== 'history') return [];
  const known = (await cardsOf<PaperRecord>(tx, chain, 'paper')).find(({ kind }) => kind === 'history');
  return known === undefined ? [] : [{ code: 'conflict', path: 'kind', given: 'history', allowed: 'a change of the history kept already', params: { reason: 'historyKept' } }];
}
