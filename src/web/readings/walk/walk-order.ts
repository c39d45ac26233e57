import { type Compass, type KeyNumber, colourOf, keysOf } from '#instrument';

/** In what order a hand goes over the keys. */
export type WalkOrder = 'chromatic' | 'naturalsThenSharps' | 'sample';

export interface WalkOrderChoice {
  readonly order: WalkOrder;
  /** First key of the walk. */
  readonly fromKey: KeyNumber;
  /** For a sample: every how manyth key is weighed. */
  readonly everyNth: number;
}

/** The keys of a walk, in the order they come up; keys below `fromKey` are left out. */
export function keysToWalk(compass: Compass, { order, fromKey, everyNth }: WalkOrderChoice): readonly KeyNumber[] {
  const keys = keysOf(compass).filter((key) => key >= fromKey);
  if (order === 'chromatic') return keys;
  if (order === 'sample') return keys.filter((key) => (key - fromKey) % Math.max(1, Math.trunc(everyNth)) === 0);
  const ofColour = (colour: 'natural' | 'sharp'): readonly KeyNumber[] => keys.filter((key) => colourOf(compass, key) === colour);
  return [...ofColour('natural'), ...ofColour('sharp')];
}
