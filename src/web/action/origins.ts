import type { KeyTouch } from '#action';
import type { QuantityName, Reading } from '#instrument';
import type { Origin } from '../figure/figure-store.ts';

/** Input fields of the touch operations that carry the name of the quantity they were read as. */
export const FIELDS = ['downWeightG', 'upWeightG', 'frontWeightG', 'hammerWeightG', 'wippenWeightG', 'helperSpringG', 'keyFrictionG'] as const satisfies readonly QuantityName[];

/** Origins of inputs by their path. */
export type Origins = Readonly<Record<string, Origin>>;

/** Standing readings of a state, found by what they are of. */
export interface ReadingsAt {
  readonly ofKey: (key: number, quantity: QuantityName) => readonly Reading[];
  readonly ofColour: (colour: KeyTouch['colour'], quantity: QuantityName) => readonly Reading[];
}

const sorted = new WeakMap<readonly Reading[], ReadingsAt>();

/** Sorts readings by what they are of; the same list is sorted once, since every figure of a page asks for it. */
export function readingsAt(readings: readonly Reading[]): ReadingsAt {
  const known = sorted.get(readings);
  if (known !== undefined) return known;
  const at = new Map<string, Reading[]>();
  for (const reading of readings) {
    const place = `${reading.scope}/${String(reading.index)}/${reading.quantity}`;
    const there = at.get(place);
    if (there === undefined) at.set(place, [reading]);
    else there.push(reading);
  }
  const made: ReadingsAt = {
    ofKey: (key, quantity) => at.get(`key/${String(key)}/${quantity}`) ?? [],
    ofColour: (colour, quantity) => at.get(`colour/${colour === 'natural' ? '0' : '1'}/${quantity}`) ?? [],
  };
  sorted.set(readings, made);
  return made;
}

/** Origins of the inputs one key gives an operation: its own readings, its key ratio from the lever arms, a spring that was not weighed. */
export function keyOriginsOf({ key, colour }: KeyTouch, input: Readonly<Record<string, unknown>>, at: ReadingsAt, path = ''): Origins {
  const origins: Record<string, Origin> = {};
  for (const field of FIELDS) {
    const readings = at.ofKey(key, field);
    if (input[field] !== undefined) origins[`${path}${field}`] = field === 'helperSpringG' && readings.length === 0 ? { how: 'noSpring' } : { readings };
  }
  if (input['keyRatio'] !== undefined) origins[`${path}keyRatio`] = { how: 'leverArms', readings: [...at.ofColour(colour, 'keyFrontMm'), ...at.ofColour(colour, 'keyBackMm')] };
  return origins;
}

/** Origins of what a key's shares are told against: its neighbours' parts, and the friction usual here. */
export const TARGET_ORIGINS: Origins = {
  'target.weightRatio': { how: 'neighbours' },
  'target.hammerWeightG': { how: 'neighbours' },
  'target.wippenWeightG': { how: 'neighbours' },
  'target.frontWeightG': { how: 'neighbours' },
  'target.frictionG': { how: 'usualFriction' },
};

/** Origins of what an intent asks and a session states of a whole row. */
export const ROW_ORIGINS: Origins = { target: { how: 'intent' }, tolerance: { how: 'intent' }, step: { how: 'step' }, uncertainty: { how: 'uncertainty' } };
