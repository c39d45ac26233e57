import { ratio } from '#units';
import type { CurveKey } from '../tuning-curve.ts';

/** An invented instrument: B falls through the wound bass, steps down at the break after key 26, and doubles every eight semitones. */
export const modelKeys: readonly CurveKey[] = Array.from({ length: 88 }, (_, index) => {
  const key = index + 1;
  const b = key <= 26 ? 3e-4 * 2 ** (-(key - 1) / 14) : 1.5e-4 * 2 ** ((key - 27) / 8);
  return { key, string: { inharmonicityB: ratio(b) } };
});
