import { type RefCallback, useCallback, useState } from 'react';

/** Width of an element in whole pixels, followed as it changes; `fallback` until it has been laid out. */
export function useWidth(fallback: number): readonly [width: number, ref: RefCallback<HTMLElement>] {
  const [width, setWidth] = useState(fallback);
  const ref = useCallback((element: HTMLElement | null) => {
    if (element === null) return undefined;
    const observer = new ResizeObserver(([entry]) => {
      if (entry !== undefined && entry.contentRect.width > 0) setWidth(Math.floor(entry.contentRect.width));
    });
    observer.observe(element);
    return () => {
      observer.disconnect();
    };
  }, []);
  return [width, ref];
}
