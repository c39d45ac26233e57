import { type Compass, type KeyNumber, type Reading, type State, noteNameOf } from '#instrument';
import type { CurveEntry } from '#workshop';
import type { FigureStory, Origin } from '../../figure/figure-store.ts';
import type { Tuning } from './use-tuning.ts';

/** The readings of B behind the keys of the curve, by their places in it; what was worked out says so. */
function originsOf({ gathered: { input, bases }, readings }: Tuning, state: State): Readonly<Record<string, Origin>> {
  return Object.fromEntries((input?.keys ?? []).map((entry, place): readonly [string, Origin] => {
    const path = `keys[${String(place)}].${'partialsHz' in entry ? 'partialsHz' : 'inharmonicityB'}`;
    const own = bases.get(entry.key) === 'measured' ? ofKey(readings, state, 'inharmonicityB', entry.key) : [];
    return [path, own.length > 0 ? { key: entry.key, readings: own } : { key: entry.key, how: bases.get(entry.key) === 'between' ? 'stiffBetween' : 'ofString' }];
  }));
}

const ofKey = (readings: readonly Reading[], state: State, quantity: string, key: KeyNumber): readonly Reading[] =>
  readings.filter((one) => one.state === state && one.quantity === quantity && one.scope === 'key' && one.index === key);

/** How a target of the curve was made: the whole curve, and the place of this key in it. */
export function targetStory(what: string, output: 'offsetsCents' | 'stretchCents' | 'frequenciesHz', key: KeyNumber, { tuning, state, compass }: { readonly tuning: Tuning; readonly state: State; readonly compass: Compass }): FigureStory {
  return { title: `${what}, ${noteNameOf(compass, key)}`, operation: 'tuning-curve', input: tuning.gathered.input ?? {}, output: `${output}[${String(tuning.targets.get(key)?.place ?? 0)}]`, origins: originsOf(tuning, state) };
}

/** How the beats of an octave on the curve were made; `undefined` where a string is known by its partials alone. */
export function beatsStory(what: string, type: string, [lower, upper]: readonly [CurveEntry, CurveEntry], [lowerHz, upperHz]: readonly [number, number]): FigureStory | undefined {
  if (!('inharmonicityB' in lower) || !('inharmonicityB' in upper)) return undefined;
  return { title: what, operation: 'beat-rates', input: { lowerHz, upperHz, lowerB: lower.inharmonicityB, upperB: upper.inharmonicityB }, output: `beatsPerSecond.${type}` };
}
