import { type QuantityName, type Reading, quantityOf } from '#instrument';
import type { ReadingEntry } from '#workshop';
import { wholeNumber } from '../../readings/grid/grid-block.ts';
import type { Recap } from './use-recap.ts';

/** What keeping a recapping writes as planned, as one step: the bridge height under load, and to be cut to where the board is known, to a hundredth. */
export function recapEntriesOf({ notes, plan }: Recap, planned: Iterable<Reading>, locale: string): readonly ReadingEntry[] {
  const standing = [...planned];
  return notes.flatMap(({ key }, index): readonly ReadingEntry[] => {
    const row = plan.rows[index];
    if (row === undefined) return [];
    const heights: readonly (readonly [QuantityName, number | undefined])[] = [['bridgeHeightMm', row.loadedMm], ['bridgeHeightUnloadedMm', row.slack?.cutToMm]];
    return heights.flatMap(([quantity, value]) => {
      const place = { quantity, scope: 'key', index: key } as const;
      const further = standing.filter((reading) => reading.quantity === quantity && reading.scope === 'key' && reading.index === key && reading.repeat > 1);
      if (value === undefined) return [];
      return [{ ...place, typed: printed(quantity, value, locale), basis: 'derived' as const }, ...further.map(({ repeat }): ReadingEntry => ({ ...place, repeat, clear: true }))];
    });
  });
}

function printed(quantity: QuantityName, value: number, locale: string): string {
  const places = 10 ** quantityOf(quantity).decimals;
  return wholeNumber(Math.round(value * places) / places, locale);
}
