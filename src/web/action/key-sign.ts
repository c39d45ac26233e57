import type { KeyTouch, TouchAnalysis } from '#action';
import type { KeyNumber } from '#instrument';
import type { KeySign } from '#plot';

/** The one sign a key carries on the drawn keyboard: what stops the key first, then its touch, then its return. */
export function signOf({ verdict, deviationG = 0, doubtful, upWeightLow, findings }: KeyTouch): KeySign | undefined {
  switch (verdict) {
    case 'outcome':
    case 'unmeasured':
      return verdict;
    case 'outside':
      return doubtful ? 'doubtful' : deviationG > 0 ? 'heavy' : 'light';
    case 'inside':
      return upWeightLow ? 'slow' : doubtful ? 'doubtful' : 'inside';
    case 'noTarget':
      return upWeightLow ? 'slow' : findings.some(({ withinUncertainty }) => !withinUncertainty) ? 'work' : undefined;
  }
}

/** Signs of all keys, for the drawn keyboard. */
export function signsOf(analysis: TouchAnalysis): ReadonlyMap<KeyNumber, KeySign> {
  return new Map(analysis.keys.flatMap((key) => {
    const sign = signOf(key);
    return sign === undefined ? [] : [[key.key, sign]];
  }));
}
