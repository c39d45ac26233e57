import type { KeyNumber } from '#instrument';
import { type EvenProperty, type KeyFigure, type OutlierNote, type ToneEvenness, type ToneOutlier, evenProperties, toneEvennessOf, toneOutliersOf } from '#tone';
import type { StateTone } from './tone-states.ts';

/** How even a state is along its keys, and what stands out in it beside. */
export interface StandOuts {
  /** A smooth curve through the keys for each property that enough keys have. */
  readonly even: Readonly<Partial<Record<EvenProperty, ToneEvenness>>>;
  readonly others: readonly ToneOutlier[];
  /** What the operation `tone-outliers` is given. */
  readonly notes: readonly OutlierNote[];
}

/** Offsets smaller than these are what one strike and the next differ by: never named, however even the rest. Of decay, as a ratio. Common practice, no source. */
const LEAST_OFFSET: Readonly<Record<EvenProperty, number>> = { brightness: 0.5, level: 2, sustain: 1.25 };

function named({ outliers, keys, ...rest }: ToneEvenness, property: EvenProperty): ToneEvenness {
  const isFar = ({ value, curve, offset }: ToneEvenness['keys'][number]): boolean =>
    property === 'sustain' ? Math.max(value / curve, curve / value) >= LEAST_OFFSET.sustain : Math.abs(offset) >= LEAST_OFFSET[property];
  const far = new Set(keys.filter(isFar).map(({ key }) => key));
  return { ...rest, keys, outliers: outliers.filter((key) => far.has(key)) };
}

/** What the operation `tone-evenness` is given of one property of a state. */
export function evenFiguresOf({ notes }: StateTone, property: EvenProperty): readonly KeyFigure[] {
  return notes.flatMap(({ key, figures: { [property]: own } }) => (own === undefined ? [] : [{ key, value: own.value }]));
}

/** Curves along the keys of a state, and the keys that stand out from them: in brightness, level and decay, in buzz, noise of the stroke, beats and unison. */
export function standOutsOf(tone: StateTone): StandOuts {
  const even = Object.fromEntries(evenProperties.flatMap((property) => {
    const result = toneEvennessOf(property, evenFiguresOf(tone, property));
    return result.ok ? [[property, named(result.value, property)] as const] : [];
  })) as StandOuts['even'];
  const notes = [...tone.byKey].filter(([key, { heard }]) => heard.heardKey === key).toSorted(([a], [b]) => a - b).map(([key, { heard: { note } }]): OutlierNote => ({
    key, betweenPartialsDb: note.descriptors?.betweenPartialsDb, attackNoiseDb: note.descriptors?.attackNoiseDb, beatDepthDb: note.decay?.beatDepthDb, unisonSpreadCents: note.unisonSpreadCents,
  }));
  const others = toneOutliersOf(notes);
  return { even, others: others.ok ? others.value : [], notes };
}

/** Every key that stands out, in whatever. */
export function keysStandingOut({ even, others }: StandOuts): ReadonlySet<KeyNumber> {
  return new Set([...evenProperties.flatMap((property) => even[property]?.outliers ?? []), ...others.map(({ key }) => key)]);
}
