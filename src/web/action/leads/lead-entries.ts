import type { PlacedLead } from '#action';
import { type KeyNumber, type QuantityName, type Reading, leadNumbers } from '#instrument';
import type { ReadingEntry } from '#workshop';
import { inGPerCm3 } from '../terms/densities.ts';
import { wholeNumber } from '../../readings/grid/grid-block.ts';

/** The leads a key is to have. */
interface KeptKey {
  readonly key: KeyNumber;
  readonly leads: readonly PlacedLead[];
}

/**
 * What keeping leads writes as planned, as one step: position and diameter of each, its bore where it is drilled out, its density where it is not of lead, counted from the front, what stood of further
 * leads and repeats withdrawn. A key that is to have none gets its first lead noted as missing, so that it is planned all the same.
 */
export function leadEntriesOf(keys: readonly KeptKey[], planned: Iterable<Reading>, locale: string): readonly ReadingEntry[] {
  const standing = [...planned].filter(({ scope }) => scope === 'key');
  return keys.flatMap(({ key, leads }) => leadNumbers.flatMap((number) => {
    const lead = leads.toSorted((a, b) => b.positionMm - a.positionMm)[number - 1];
    const nameOf = (size: 'PositionMm' | 'DiameterMm' | 'BoreMm' | 'DensityGPerCm3'): QuantityName => `lead${String(number)}${size}` as QuantityName;
    const isNone = number === 1 && lead === undefined;
    const write = (quantity: QuantityName, entry: Pick<ReadingEntry, 'typed' | 'outcome'> | undefined): readonly ReadingEntry[] => {
      const place = { quantity, scope: 'key', index: key } as const;
      const clears = standing.filter((one) => one.index === key && one.quantity === quantity && (one.repeat > 1 || entry === undefined)).map(({ repeat }): ReadingEntry => ({ ...place, repeat, clear: true }));
      return entry === undefined ? clears : [{ ...place, ...entry, basis: 'derived' }, ...clears];
    };
    const typed = (value: number): Pick<ReadingEntry, 'typed'> => ({ typed: wholeNumber(value, locale) });
    return [
      ...write(nameOf('PositionMm'), lead !== undefined ? typed(lead.positionMm) : isNone ? { outcome: 'missing' } : undefined),
      ...write(nameOf('DiameterMm'), lead === undefined ? undefined : typed(lead.diameterMm)),
      ...write(nameOf('BoreMm'), lead?.boreMm === undefined ? undefined : typed(lead.boreMm)),
      ...write(nameOf('DensityGPerCm3'), lead?.densityGPerMm3 === undefined ? undefined : typed(inGPerCm3(lead.densityGPerMm3))),
    ];
  }));
}
