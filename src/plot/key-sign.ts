import { type KeyTouch, isAdvice } from '#action';
import type { KeyNumber } from '#instrument';
import type { KeySign } from './keyboard-scene.ts';

/**
 * The one sign a key carries on every drawn keyboard: what stops it first, then its touch, then its return.
 * A key outside is heavy or light even where its uncertainty reaches the limit; where nothing is asked for yet, a key with a finding to
 * act on is marked for work, and no other; advice marks none.
 */
export function signOf({ verdict, deviationG = 0, doubtful, upWeightLow, findings }: KeyTouch): KeySign | undefined {
  switch (verdict) {
    case 'outcome':
    case 'unmeasured':
      return verdict;
    case 'outside':
      return deviationG > 0 ? 'heavy' : 'light';
    case 'inside':
      return upWeightLow ? 'slow' : doubtful ? 'doubtful' : 'inside';
    case 'noTarget':
      return findings.some((finding) => !finding.withinUncertainty && !isAdvice(finding)) ? 'work' : undefined;
  }
}

/** Signs of all keys that carry one, for the drawn keyboard. */
export function signsOf(keys: readonly KeyTouch[]): ReadonlyMap<KeyNumber, KeySign> {
  return new Map(keys.flatMap((key) => {
    const sign = signOf(key);
    return sign === undefined ? [] : [[key.key, sign] as const];
  }));
}
