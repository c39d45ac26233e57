import { type Result, all, ok } from '#result';
import { type Grams, grams } from '#units';
import { type HammerAnchors, hammerTargetOf } from '../hammer-curve.ts';
import { smoothCurve } from '../smoothing.ts';

/** How the planned hammers come about. */
export type HammerPlan =
  | { readonly after: 'found' }
  | { readonly after: 'anchors'; readonly anchors: HammerAnchors }
  | { readonly after: 'smoothed'; readonly lambda: number; readonly sections: readonly { readonly firstKey: number; readonly lastKey: number }[] };

/** Fewest weighed hammers that a section is smoothed from; with fewer it stays as weighed. */
const FEWEST = 5;

/**
 * Planned hammer weights, bass to treble: the measured set as it is, a quadratic through three anchors that falls all the way,
 * or the measured set smoothed section by section, since a break in the stringing may be one in the hammers too. Grams; `null`
 * where the measured set has a gap that is not bridged.
 * @source OWN · EILERS-WHITTAKER
 */
export function plannedHammersOf(plan: HammerPlan, found: readonly (Grams | null)[]): Result<readonly (Grams | null)[]> {
  if (plan.after === 'found') return ok(found);
  if (plan.after === 'anchors') return hammerTargetOf(plan.anchors, found.length);
  const bounds = plan.sections.length === 0 ? [{ firstKey: 1, lastKey: found.length }] : plan.sections;
  const sections = bounds.map(({ firstKey, lastKey }) => smoothedPart(found.slice(firstKey - 1, lastKey), plan.lambda, firstKey));
  const parts = all(sections);
  if (!parts.ok) return parts;
  const smoothed = new Map(parts.value.flat().map(({ key, weightG }) => [key, weightG]));
  return ok(found.map((weight, index) => smoothed.get(index + 1) ?? weight));
}

function smoothedPart(values: readonly (Grams | null)[], lambda: number, firstKey: number): Result<readonly { readonly key: number; readonly weightG: Grams }[]> {
  if (values.filter((value) => value !== null).length < FEWEST) return ok([]);
  const curve = smoothCurve({ values, lambda });
  return curve.ok ? ok(curve.value.map((weight, index) => ({ key: firstKey + index, weightG: grams(weight) }))) : curve;
}
