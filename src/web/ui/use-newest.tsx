import { type ReactNode, useState } from 'react';
import { useSay } from '../language/use-say.ts';

/** How many are shown at first, and with each further step back. */
const STEP = 12;

/** The newest of a list that stands oldest first, newest on top, and the button that shows older ones; none where all are shown. */
export function useNewest<T>(items: readonly T[]): { readonly shown: readonly T[]; readonly older: ReactNode } {
  const say = useSay();
  const [count, setCount] = useState(STEP);
  return {
    shown: items.slice(-count).toReversed(),
    older: items.length > count && <button type="button" className="button" onClick={() => { setCount(count + STEP); }}>{say('shell.more', { shown: count, total: items.length })}</button>,
  };
}
