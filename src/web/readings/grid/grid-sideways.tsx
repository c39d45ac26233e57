import { type RefObject, useEffect, useState } from 'react';
import { useSay } from '../../language/use-say.ts';

interface GridSidewaysProps {
  readonly table: RefObject<HTMLTableElement | null>;
  /** How many columns the table has; looked at anew when it changes. */
  readonly columns: number;
}

type Hidden = 'none' | 'left' | 'right' | 'both';

/** Share of the view moved over at a press. */
const STRIDE = 0.6;

/** Says in view that columns stand beside what is seen, where a screen shows no scroll bar, and leads to them. */
export function GridSideways({ table, columns }: GridSidewaysProps) {
  const say = useSay();
  const [hidden, setHidden] = useState<Hidden>('none');
  useEffect(() => {
    const scroller = table.current?.parentElement;
    if (scroller == null) return undefined;
    const look = (): void => { setHidden(hiddenOf(scroller)); };
    look();
    const watch = new ResizeObserver(look);
    watch.observe(scroller);
    scroller.addEventListener('scroll', look, { passive: true });
    return () => {
      watch.disconnect();
      scroller.removeEventListener('scroll', look);
    };
  }, [table, columns]);
  if (hidden === 'none') return null;
  const move = (by: 1 | -1): void => {
    const scroller = table.current?.parentElement;
    scroller?.scrollBy({ left: by * STRIDE * scroller.clientWidth });
  };
  return (
    <span className="grid-sideways">
      <button type="button" className="button" disabled={hidden === 'right'} aria-label={say('readings.grid.left')} onClick={() => { move(-1); }}>←</button>
      <button type="button" className="button" disabled={hidden === 'left'} aria-label={say('readings.grid.right')} onClick={() => { move(1); }}>→</button>
    </span>
  );
}

function hiddenOf({ scrollLeft, scrollWidth, clientWidth }: HTMLElement): Hidden {
  const left = scrollLeft > 1;
  const right = scrollLeft + clientWidth < scrollWidth - 1;
  return left && right ? 'both' : left ? 'left' : right ? 'right' : 'none';
}
