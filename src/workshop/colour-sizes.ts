import { type KeyColour, type QuantityName, type Reading, type State, quantityOf } from '#instrument';
import { meanOf } from '#numerics';

/** Sizes of all keys of one colour, means of their repeats. */
export interface ColourSizes {
  readonly sizes: Partial<Readonly<Record<QuantityName, number>>>;
  /** True where at least one was not measured in this state and stands as found. */
  readonly isFromFound: boolean;
}

/** Sizes of one colour of key in a state; what was not measured again stands as it was found. */
export function colourSizesOf(readings: readonly Reading[], cycle: number, state: State, colour: KeyColour): ColourSizes {
  const own = meansOf(readings, cycle, state, colour);
  const found = state === 'found' ? {} : meansOf(readings, cycle, 'found', colour);
  return { sizes: { ...found, ...own }, isFromFound: Object.keys(found).some((name) => !(name in own)) };
}

function meansOf(readings: readonly Reading[], cycle: number, state: State, colour: KeyColour): ColourSizes['sizes'] {
  const groups = new Map<QuantityName, number[]>();
  for (const reading of readings) {
    if (reading.cycle !== cycle || reading.state !== state || reading.value === null || reading.scope !== 'colour' || reading.index !== (colour === 'natural' ? 0 : 1) || quantityOf(reading.quantity).scope !== 'colour') continue;
    groups.set(reading.quantity, [...(groups.get(reading.quantity) ?? []), reading.value]);
  }
  return Object.fromEntries([...groups].map(([name, values]) => [name, meanOf(values)]));
}
