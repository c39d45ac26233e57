import type { Instrument, KeyNumber, QuantityName } from '#instrument';
import type { NoteSizes, Size } from './scale-sizes.ts';

/** What was read of the bearing of one note. */
export type BellySizes = NoteSizes;

/** Measures of a note that run smoothly along a bridge, so that they may be laid between stations. */
export const stationMeasures = ['backLengthMm', 'frontHeightMm', 'bridgeHeightMm', 'rearHeightMm', 'bridgeHeightUnloadedMm'] as const satisfies readonly QuantityName[];
export type StationHeights = Partial<Readonly<Record<(typeof stationMeasures)[number], Size>>>;

/**
 * Heights and back lengths by key: as measured, and between two stations of one section on a straight line over the keys,
 * h(k) = h₁ + (k − k₁)/(k₂ − k₁)·(h₂ − h₁). Nothing is laid beyond the outermost station of a section, nor across a break.
 * @source OWN
 */
export function heightsOf(sizes: ReadonlyMap<KeyNumber, BellySizes>, sections: Instrument['sections']): ReadonlyMap<KeyNumber, StationHeights> {
  const heights = new Map<KeyNumber, Record<string, Size>>();
  for (const measure of stationMeasures) {
    for (const [key, size] of laidBetween(sizes, measure, sections)) heights.set(key, { ...heights.get(key), [measure]: size });
  }
  return heights;
}

function laidBetween(sizes: ReadonlyMap<KeyNumber, BellySizes>, measure: QuantityName, sections: Instrument['sections']): ReadonlyMap<KeyNumber, Size> {
  const stations = [...sizes].flatMap(([key, of]) => (of[measure] === undefined ? [] : [{ key, ...of[measure] }])).toSorted((a, b) => a.key - b.key);
  const laid = new Map<KeyNumber, Size>(stations.map(({ key, ...size }) => [key, size]));
  for (const { firstKey, lastKey } of sections) {
    const within = stations.filter(({ key }) => key >= firstKey && key <= lastKey);
    for (const [index, upper] of within.entries()) {
      const lower = within[index - 1];
      if (lower === undefined) continue;
      for (let key = lower.key + 1; key < upper.key; key += 1) {
        laid.set(key, { value: lower.value + ((key - lower.key) / (upper.key - lower.key)) * (upper.value - lower.value), isEstimated: true });
      }
    }
  }
  return laid;
}
