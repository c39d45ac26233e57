import { type QuantityName, type Reading, isQuantityName } from '#instrument';
import type { WorkItem } from '#workshop';

/** Quantities a done job still asks for: those not read as finished since it was done. */
export function stillToWeigh({ key, status, doneAt, remeasure }: WorkItem, finished: Iterable<Reading>): readonly QuantityName[] {
  if (status !== 'done' || doneAt === null || key === null) return [];
  const weighed = new Set<string>();
  for (const { scope, index, quantity, at } of finished) {
    if (scope === 'key' && index === key && Date.parse(at) >= Date.parse(doneAt)) weighed.add(quantity);
  }
  return remeasure.filter(isQuantityName).filter((quantity) => !weighed.has(quantity));
}
