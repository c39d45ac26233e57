import { expect, it } from 'vitest';
import { hasWeights } from './has-weights.ts';

const columns = (...held: readonly (string | null)[]) => ({ columns: held.map((mapsTo, index) => ({ letter: String(index), header: '', mapsTo, reason: null })) });

it('asks for a session where a column holds weights, a repeat of them too, and not for keys, remarks and lengths alone', () => {
  expect(hasWeights(columns('key', 'downWeightG'))).toBe(true);
  expect(hasWeights(columns('note', null, 'upWeightG#2'))).toBe(true);
  expect(hasWeights(columns('key', 'remark', null, 'keyFrontMm'))).toBe(false);
});
