import { type KeyNumber, type Part, type QuantityName, type Reading, type State, quantityOf } from '#instrument';
import { meanOf } from '#numerics';

/** A size as it stands: the mean of its repeats. */
export interface Size {
  readonly value: number;
  /** Standard uncertainty the readings carry themselves. */
  readonly uncertainty?: number;
  /** True where the figure itself was noted as an estimate. */
  readonly isEstimated: boolean;
}

/** The sizes of one note by quantity; what gave no number is absent. */
export type NoteSizes = Partial<Readonly<Record<QuantityName, Size>>>;

const OF_WIRE = ['wireDiameterMm', 'hexCoreMm', 'overallDiameterMm', 'innerWrapMm', 'outerWrapMm'] as const satisfies readonly QuantityName[];

/** True where anything of the wire itself is stated. */
export function hasWire(sizes: NoteSizes): boolean {
  return OF_WIRE.some((name) => sizes[name] !== undefined);
}

/** The sizes of one part of the instrument in one state, by key. */
export function sizesByKey(readings: readonly Reading[], cycle: number, state: State, part: Part = 'strings'): ReadonlyMap<KeyNumber, NoteSizes> {
  const groups = new Map<KeyNumber, Map<QuantityName, Reading[]>>();
  for (const reading of readings) {
    if (reading.cycle !== cycle || reading.state !== state || reading.value === null || reading.scope !== 'key' || quantityOf(reading.quantity).part !== part) continue;
    const ofKey = groups.get(reading.index) ?? new Map<QuantityName, Reading[]>();
    groups.set(reading.index, ofKey);
    ofKey.set(reading.quantity, [...(ofKey.get(reading.quantity) ?? []), reading]);
  }
  return new Map([...groups].map(([key, ofKey]) => [key, Object.fromEntries([...ofKey].map(([quantity, repeats]) => [quantity, sizeOf(repeats)])) as NoteSizes]));
}

/** Mean of the repeats; its uncertainty where every one of them carries one. */
function sizeOf(repeats: readonly Reading[]): Size {
  const known = repeats.flatMap(({ uncertainty }) => uncertainty ?? []);
  return {
    value: meanOf(repeats.flatMap(({ value }) => value ?? [])),
    isEstimated: repeats.some(({ basis }) => basis === 'estimated'),
    ...(known.length < repeats.length ? {} : { uncertainty: Math.hypot(...known) / repeats.length }),
  };
}
