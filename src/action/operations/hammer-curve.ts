import { defineOperation, field } from '#operation';
import { type Issue, ok, refuse } from '#result';
import type { Grams } from '#units';
import { z } from 'zod';
import { type HammerAnchors, hammerCurveOf, riseOf } from '../hammer-curve.ts';

const MAX_KEYS = 1000;

const anchor = z.strictObject({
  key: field.count({ min: 1, max: MAX_KEYS, describe: 'Counted from 1 in the bass' }),
  weightG: field.grams({ min: 0.001, max: 1000, describe: 'Hammer weight wanted there' }),
});

/** Hammer weights for every key from three the shop sets. */
export const hammerCurveOperation = defineOperation({
  name: 'hammer-curve',
  input: z.strictObject({
    anchors: z.array(anchor).length(3).describe('Three keys, each with its weight, in any order'),
    keys: field.count({ min: 3, max: MAX_KEYS, describe: 'Keys of the keyboard' }).default(88),
  }),
  output: z.strictObject({
    weightsG: z.array(field.grams()).describe('One for each key, from key 1'),
    falling: z.boolean().describe('Whether every hammer is lighter than the one below it; a target should fall'),
    risesFromKey: field.count({ describe: 'First key that is not lighter than the one below it' }).optional(),
    largestRiseG: field.grams({ describe: 'Largest step upward from key to key' }).optional(),
  }),
  formula: ['w(n) = Σ_i w_i·Π_{j≠i} (n − n_j)/(n_i − n_j)', 'falling: w(n + 1) < w(n) for every n'],
  sources: ['LAGRANGE-1795', 'OWN'],
  example: { anchors: [{ key: 1, weightG: 11.2 }, { key: 40, weightG: 8.9 }, { key: 88, weightG: 5.6 }], keys: 88 },
  run: ({ anchors, keys }) => {
    const issues = anchorIssues(anchors, keys);
    if (issues.length > 0) return refuse(...issues);
    const weightsG = hammerCurveOf(anchors as unknown as HammerAnchors, keys);
    const below = weightsG.findIndex((weight) => weight <= 0);
    if (below >= 0) return refuse(weightless(anchors, below + 1, weightsG[below]));
    const rise = riseOf(weightsG);
    return ok({ weightsG: [...weightsG], falling: rise === undefined, ...(rise === undefined ? {} : { risesFromKey: rise.key, largestRiseG: rise.byG }) });
  },
});

function anchorIssues(anchors: readonly { readonly key: number }[], keys: number): readonly Issue[] {
  return anchors.flatMap(({ key }, index): readonly Issue[] => {
    const path = `anchors[${String(index)}].key`;
    if (key > keys) return [{ code: 'range', path, given: key, allowed: `1 to ${String(keys)}`, params: { min: 1, max: keys } }];
    if (anchors.findIndex((other) => other.key === key) < index) return [{ code: 'duplicate', path, given: key, allowed: 'three different keys', params: { reason: 'anchorKey' } }];
    return [];
  });
}

function weightless(anchors: unknown, key: number, weightG: Grams | undefined): Issue {
  return {
    code: 'unsolvable', path: 'anchors', given: anchors, allowed: `a curve above nought; this one comes to ${String(weightG)} g at key ${String(key)}`,
    params: { reason: 'curveBelowNought', key, weightG: weightG ?? 0 },
  };
}
