import { type Instrument, type Observation, type ObservationDraft, compassOf, keyCountOf, observationDraftSchema } from '#instrument';
import type { Issue } from '#result';
import { StoreFailure } from '../bench-store.ts';
import { fitting, stated } from '../check.ts';
import type { Bench } from '../database.ts';
import { cycleAspect } from '../log/aspects.ts';
import { unkeptPhotos } from '../photos.ts';
import { type Sight, checkCycle, writeAt } from '../write.ts';
import { cardThere, fieldChange } from './card.ts';
import { withdrawing } from './withdraw.ts';

const REFUSED = 'The observation cannot be kept as given.';
type Wanted = Omit<Observation, 'id' | 'at'>;

/** Keeps what was seen, with photos that were kept before. */
export async function addObservation(bench: Bench, id: string, draft: ObservationDraft, by: string): Promise<Observation> {
  const wanted = fitting(observationDraftSchema, draft, REFUSED);
  return await writeAt(bench, id, by, (sight) => {
    check(bench, sight, wanted);
    const seen: Observation = { ...wanted, id: bench.newId(), at: sight.at.toISOString() };
    return Promise.resolve({
      kind: 'observation.added',
      changes: [{ entity: 'observation', place: seen.id, before: null, after: seen }],
      rests: [cycleAspect(wanted.cycle, id)],
      answer: () => seen,
    });
  });
}

/** Corrects what was seen; fields left out stay. */
export async function changeObservation(bench: Bench, id: string, observationId: string, change: Partial<ObservationDraft>, by: string): Promise<Observation> {
  return await writeAt(bench, id, by, async (sight) => {
    const { id: own, at, ...draft } = await cardThere<Observation>(sight.tx, sight.chain, 'observation', observationId);
    const wanted = fitting(observationDraftSchema, { ...draft, ...stated(change) }, REFUSED);
    check(bench, sight, wanted);
    const made = fieldChange('observation', observationId, draft, wanted);
    return { kind: 'observation.changed', changes: made === undefined ? [] : [made], rests: [cycleAspect(wanted.cycle, id)], answer: () => ({ ...wanted, id: own, at }) };
  });
}

/** Withdraws an observation; its photos stay. */
export const withdrawObservation = withdrawing<Observation>('observation');

/** Refuses a stay that has not been, keys off the keyboard or the wrong way round, and photos that were not kept. */
function check(bench: Bench, sight: Sight, wanted: Wanted): void {
  checkCycle(sight, wanted.cycle);
  const issues = [...keyIssues(wanted, sight.instrument), ...unkeptPhotos(bench, wanted.photos)];
  if (issues.length > 0) throw new StoreFailure('refused', REFUSED, issues);
}

function keyIssues({ fromKey, toKey }: Wanted, instrument: Instrument): readonly Issue[] {
  const keys = keyCountOf(compassOf(instrument));
  const off = Object.entries({ fromKey, toKey }).flatMap(([path, key]): readonly Issue[] =>
    key === null || key <= keys ? [] : [{ code: 'range', path, given: key, allowed: `key 1 to ${String(keys)}`, params: { min: 1, max: keys } }]);
  if (off.length > 0 || fromKey === null || toKey === null || fromKey <= toKey) return off;
  return [{ code: 'order', path: 'toKey', given: toKey, allowed: `key ${String(fromKey)} or above`, params: { min: fromKey } }];
}
