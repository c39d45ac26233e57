import type { Lead } from '#action';
import { type KeyColour, type KeyNumber, type QuantityName, type Reading, leadNumbers } from '#instrument';
import { meanOf } from '#numerics';
import { gramsPerCubicMillimetre, millimetres } from '#units';

/** What stands of one state, found by what it is of: the mean of the repeats that gave a number. */
export interface SizesAt {
  readonly ofKey: (key: KeyNumber, quantity: QuantityName) => number | undefined;
  readonly ofColour: (colour: KeyColour, quantity: QuantityName) => number | undefined;
  readonly ofWhole: (quantity: QuantityName) => number | undefined;
}

/** Sorts the standing readings of one cycle and state by what they are of. */
export function sizesAt(readings: readonly Reading[], cycle: number, state: Reading['state']): SizesAt {
  const values = new Map<string, number[]>();
  for (const reading of readings) {
    if (reading.cycle !== cycle || reading.state !== state || reading.value === null) continue;
    const place = `${reading.scope}/${String(reading.index)}/${reading.quantity}`;
    values.set(place, [...(values.get(place) ?? []), reading.value]);
  }
  const at = (place: string): number | undefined => {
    const here = values.get(place);
    return here === undefined ? undefined : meanOf(here);
  };
  return {
    ofKey: (key, quantity) => at(`key/${String(key)}/${quantity}`),
    ofColour: (colour, quantity) => at(`colour/${colour === 'natural' ? '0' : '1'}/${quantity}`),
    ofWhole: (quantity) => at(`instrument/0/${quantity}`),
  };
}

/** Cubic millimetres in a cubic centimetre. */
const CUBIC_MM_PER_CM = 1000;

/** Leads noted in a key, those with both place and diameter, from the front. */
export function leadsAt(sizes: SizesAt, key: KeyNumber): readonly Lead[] {
  return leadNumbers.flatMap((number): readonly Lead[] => {
    const [position, diameter, bore, density] = (['PositionMm', 'DiameterMm', 'BoreMm', 'DensityGPerCm3'] as const).map((size) => sizes.ofKey(key, `lead${String(number)}${size}` as QuantityName));
    if (position === undefined || diameter === undefined) return [];
    const other = density === undefined ? {} : { densityGPerMm3: gramsPerCubicMillimetre(density / CUBIC_MM_PER_CM) };
    return [{ positionMm: millimetres(position), diameterMm: millimetres(diameter), ...(bore === undefined ? {} : { boreMm: millimetres(bore) }), ...other }];
  });
}
