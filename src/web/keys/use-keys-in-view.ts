import type { KeyNumber } from '#instrument';
import { type RefObject, type UIEvent, useEffect, useRef } from 'react';

/** Two strips of the same keys that scroll as one, and turn to the key chosen. */
export interface KeysInView {
  readonly keys: RefObject<HTMLDivElement | null>;
  readonly plots: RefObject<HTMLDivElement | null>;
  readonly onScroll: (event: UIEvent<HTMLDivElement>) => void;
}

export function useKeysInView(selected: KeyNumber | undefined): KeysInView {
  const keys = useRef<HTMLDivElement>(null);
  const plots = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const strip = plots.current;
    const chosen = strip?.querySelector('.scene-chosen')?.getBoundingClientRect();
    if (strip === null || chosen === undefined) return;
    const { left, right, width } = strip.getBoundingClientRect();
    if (chosen.left < left || chosen.right > right) strip.scrollLeft += chosen.left - left - width / 2;
  }, [selected]);
  const onScroll = ({ currentTarget }: UIEvent<HTMLDivElement>): void => {
    const other = currentTarget === keys.current ? plots.current : keys.current;
    if (other !== null && other.scrollLeft !== currentTarget.scrollLeft) other.scrollLeft = currentTarget.scrollLeft;
  };
  return { keys, plots, onScroll };
}
