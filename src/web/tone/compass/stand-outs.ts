import type { KeyNumber } from '#instrument';
import { type EvenProperty, type OutlierNote, type ToneEvenness, type ToneOutlier, evenProperties, toneEvennessOf, toneOutliersOf } from '#tone';
import type { StateTone } from './state-tone.ts';

/** A smooth curve through the keys for each property that enough keys have. */
export type EvennessOf = Readonly<Partial<Record<EvenProperty, ToneEvenness>>>;

/** How even a state is along its keys, and what stands out in it beside. */
export interface StandOuts {
  readonly even: EvennessOf;
  readonly others: readonly ToneOutlier[];
}

/** Offsets smaller than these are what one strike and the next differ by: never named, however even the rest. Of decay, as a ratio. Common practice, no source. */
const LEAST_OFFSET: Readonly<Record<EvenProperty, number>> = { brightness: 0.5, level: 2, sustain: 1.25 };

function named({ outliers, keys, ...rest }: ToneEvenness, property: EvenProperty): ToneEvenness {
  const isFar = ({ value, curve, offset }: ToneEvenness['keys'][number]): boolean =>
    property === 'sustain' ? Math.max(value / curve, curve / value) >= LEAST_OFFSET.sustain : Math.abs(offset) >= LEAST_OFFSET[property];
  const far = new Set(keys.filter(isFar).map(({ key }) => key));
  return { ...rest, keys, outliers: outliers.filter((key) => far.has(key)) };
}

/** Curves along the keys of a state, and the keys that stand out from them. */
export function standOutsOf({ notes, byKey }: StateTone): StandOuts {
  const even = Object.fromEntries(evenProperties.flatMap((property) => {
    const figures = notes.flatMap(({ key, figures: own }) => (own[property] === undefined ? [] : [{ key, value: own[property].value }]));
    const result = toneEvennessOf(property, figures);
    return result.ok ? [[property, named(result.value, property)] as const] : [];
  })) as EvennessOf;
  const others = toneOutliersOf([...byKey].map(([key, { heard }]): OutlierNote => ({
    key, attackNoiseDb: heard.descriptors?.attackNoiseDb?.value, beatDepthDb: heard.decay?.beats?.depthDb, unisonSpreadCents: heard.note?.unisonSpreadCents,
  })));
  return { even, others: others.ok ? others.value : [] };
}

/** Every key that stands out, in whatever. */
export function keysStandingOut({ even, others }: StandOuts): ReadonlySet<KeyNumber> {
  return new Set([...evenProperties.flatMap((property) => even[property]?.outliers ?? []), ...others.map(({ key }) => key)]);
}
