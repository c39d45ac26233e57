import { type Result, ok, refuse } from '#result';
import { type Grams, grams } from '#units';

/** A weight the shop sets for one key; keys counted from 1 in the bass. */
export interface HammerAnchor {
  readonly key: number;
  readonly weightG: Grams;
}

/** Three anchors, their keys different. */
export type HammerAnchors = readonly [HammerAnchor, HammerAnchor, HammerAnchor];

/**
 * The parabola through three anchors, for keys 1 to `keys`.
 * w(n) = Σ_i w_i·Π_{j≠i} (n − n_j)/(n_i − n_j), grams. Says nothing of whether it falls: see {@link riseOf}.
 * @source LAGRANGE-1795
 */
export function hammerCurveOf(anchors: HammerAnchors, keys: number): readonly Grams[] {
  return Array.from({ length: keys }, (_, index) => grams(anchors.reduce((sum, { key, weightG }) => sum + weightG * shareAt(index + 1, key, anchors), 0)));
}

function shareAt(key: number, own: number, anchors: HammerAnchors): number {
  return anchors.reduce((product, other) => (other.key === own ? product : (product * (key - other.key)) / (own - other.key)), 1);
}

/** Where a row of weights stops falling. */
export interface Rise {
  /** The first key, counted from 1, that is not lighter than the key below it. */
  readonly key: number;
  /** Largest step upward, nought for a level one. */
  readonly byG: Grams;
}

/** Where weights from the bass up stop falling, or `undefined` when each is lighter than the one before. @source OWN */
export function riseOf(weightsG: readonly Grams[]): Rise | undefined {
  const steps = weightsG.slice(1).map((weight, index) => weight - (weightsG[index] ?? weight));
  const first = steps.findIndex((step) => step >= 0);
  return first < 0 ? undefined : { key: first + 2, byG: grams(Math.max(...steps)) };
}

/**
 * A curve of hammer weights fit to be a target: above nought and falling all the way.
 * @returns an issue naming the anchor to change, the key where the curve fails and by how much.
 * @source OWN
 */
export function hammerTargetOf(anchors: HammerAnchors, keys: number): Result<readonly Grams[]> {
  const weightsG = hammerCurveOf(anchors, keys);
  const rise = riseOf(weightsG);
  if (rise === undefined) return ok(weightsG);
  return refuse({
    code: 'unsolvable', path: 'anchors', given: anchors, allowed: `a curve that falls all the way; this one rises from key ${String(rise.key)}, by up to ${String(rise.byG)} g from key to key`,
    params: { reason: 'curveRises', key: rise.key, byG: rise.byG },
  });
}
