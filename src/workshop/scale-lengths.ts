import type { Instrument, KeyNumber } from '#instrument';
import { type Millimetres, millimetres } from '#units';
import type { NoteSizes } from './scale-sizes.ts';

export interface NoteLength {
  readonly lengthMm: Millimetres;
  readonly isEstimated: boolean;
}

/**
 * Speaking lengths by key: as measured, and between measured notes of one section on a line in ln L over the keys.
 * ln L(k) = ln L₁ + (k − k₁)/(k₂ − k₁)·(ln L₂ − ln L₁). Nothing is laid beyond the outermost measured note of a section, nor across a break.
 * @source OWN
 */
export function lengthsOf(sizes: ReadonlyMap<KeyNumber, NoteSizes>, sections: Instrument['sections']): ReadonlyMap<KeyNumber, NoteLength> {
  const measured = [...sizes].flatMap(([key, { speakingLengthMm }]) => (speakingLengthMm === undefined ? [] : [{ key, ...speakingLengthMm }])).toSorted((a, b) => a.key - b.key);
  const lengths = new Map<KeyNumber, NoteLength>(measured.map(({ key, value, isEstimated }) => [key, { lengthMm: millimetres(value), isEstimated }]));
  for (const { firstKey, lastKey } of sections) {
    const within = measured.filter(({ key }) => key >= firstKey && key <= lastKey);
    for (const [index, upper] of within.entries()) {
      const lower = within[index - 1];
      if (lower === undefined) continue;
      for (let key = lower.key + 1; key < upper.key; key += 1) {
        const share = (key - lower.key) / (upper.key - lower.key);
        lengths.set(key, { lengthMm: millimetres(lower.value ** (1 - share) * upper.value ** share), isEstimated: true });
      }
    }
  }
  return lengths;
}
