import { useRef } from 'react';

/** The value handed in before while it says the same: what does not change is not drawn anew. */
export function useSteady<T>(value: T, isSame: (one: T, other: T) => boolean): T {
  const kept = useRef(value);
  if (!isSame(kept.current, value)) kept.current = value;
  return kept.current;
}
