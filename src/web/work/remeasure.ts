import { type QuantityName, type Reading, type State, isQuantityName } from '#instrument';
import type { WorkItem } from '#workshop';

/** Jobs that only measure: they change nothing, so that their figures are still those as found. */
const MEASURING: ReadonlySet<string> = new Set(['measureKeyFriction', 'weighParts', 'weighAgain']);

/** The state the figures of a done job belong to. */
export function stateToWeigh({ remedy }: Pick<WorkItem, 'remedy'>): Extract<State, 'found' | 'finished'> {
  return MEASURING.has(remedy) ? 'found' : 'finished';
}

/** Standing readings of the two states a job can ask for. */
export type WeighedStates = Readonly<Record<'found' | 'finished', ReadonlyMap<string, Reading>>>;

/** Quantities a done job still asks for: those not read since it was done; what only was to be measured, not read at all. */
export function stillToWeigh(item: WorkItem, states: WeighedStates): readonly QuantityName[] {
  const { key, status, doneAt, remeasure, remedy } = item;
  if (status !== 'done' || doneAt === null || key === null) return [];
  const from = MEASURING.has(remedy) && remedy !== 'weighAgain' ? Number.NEGATIVE_INFINITY : Date.parse(doneAt);
  const weighed = new Set<string>();
  for (const reading of states[stateToWeigh(item)].values()) {
    if (reading.scope === 'key' && reading.index === key && takenAt(reading) >= from) weighed.add(reading.quantity);
  }
  return remeasure.filter(isQuantityName).filter((quantity) => !weighed.has(quantity));
}

/** When a figure was taken: as typed, where the device said so, and never later than it was acknowledged, whatever the device's clock says. */
function takenAt({ at, typedAt = at }: Reading): number {
  return Math.min(Date.parse(at), Date.parse(typedAt));
}
