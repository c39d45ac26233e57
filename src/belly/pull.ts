import { type Result, ok, refuse } from '#result';
import type { Newtons } from '#units';
import type { Pull } from './as-read.ts';

/** Tension and count together, or neither; refuses one without the other by the name of the one missing. */
export function pullOf({ tensionN, strings }: { readonly tensionN?: Newtons | undefined; readonly strings?: number | undefined }): Result<Pull | undefined> {
  if (tensionN !== undefined && strings !== undefined) return ok({ tensionN, strings });
  if (tensionN === undefined && strings === undefined) return ok(undefined);
  return refuse({ code: 'required', path: tensionN === undefined ? 'tensionN' : 'strings', given: undefined, allowed: 'a number, since the force takes tension and count of the strings', params: { kind: 'number' } });
}
