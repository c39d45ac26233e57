import type { QuantityName, Reading, Scope } from '#instrument';
import type { ReadingEntry } from '#workshop';
import { wholeNumber } from '../../readings/grid/grid-block.ts';

interface DerivedFigure {
  readonly quantity: QuantityName;
  readonly scope: Scope;
  readonly index: number;
  readonly value: number;
}

/** Worked-out figures as entries, to a hundredth: what stands there already in the same figure is left alone, further repeats at these places are cleared. */
export function derivedEntries(wanted: readonly DerivedFigure[], planned: Iterable<Reading>, locale: string): readonly ReadingEntry[] {
  const standing = [...planned];
  return wanted.flatMap(({ value, ...place }): readonly ReadingEntry[] => {
    const here = standing.filter((reading) => reading.quantity === place.quantity && reading.scope === place.scope && reading.index === place.index);
    const rounded = Math.round(value * 100) / 100;
    const isSame = here.some(({ repeat, value: stands }) => repeat === 1 && stands === rounded);
    const further = here.filter(({ repeat }) => repeat > 1).map(({ repeat }): ReadingEntry => ({ ...place, repeat, clear: true }));
    return isSame ? further : [{ ...place, typed: wholeNumber(rounded, locale), basis: 'derived' }, ...further];
  });
}
