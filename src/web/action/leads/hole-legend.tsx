import { type HoleUse, type Mark } from '#plot';
import { useSay } from '../../language/use-say.ts';
import { MarkView } from '../../leaves/mark-view.tsx';

const uses: Readonly<Record<HoleUse, readonly Mark[]>> = {
  refill: [{ type: 'symbol', role: 'found', shape: 'ring', x: 9, y: 9, radiusPx: 6 }, { type: 'symbol', role: 'found', shape: 'dot', x: 9, y: 9, radiusPx: 6 }],
  trim: [{ type: 'symbol', role: 'found', shape: 'ring', x: 9, y: 9, radiusPx: 6 }, { type: 'symbol', role: 'planned', shape: 'ring', x: 9, y: 9, radiusPx: 3 }],
  exchange: [{ type: 'symbol', role: 'found', shape: 'ring', x: 9, y: 9, radiusPx: 6 }, { type: 'symbol', role: 'planned', shape: 'diamond', x: 9, y: 9, radiusPx: 3.6 }],
  plug: [{ type: 'symbol', role: 'found', shape: 'ring', x: 9, y: 9, radiusPx: 6 }, { type: 'symbol', role: 'found', shape: 'cross', x: 9, y: 9, radiusPx: 3.6 }],
  new: [{ type: 'symbol', role: 'planned', shape: 'diamond', x: 9, y: 9, radiusPx: 5 }],
};

/** What the marks of the holes mean; another metal only where there is one. */
export function HoleLegend({ hasExchanged }: { readonly hasExchanged: boolean }) {
  const say = useSay();
  return (
    <ul className="sign-legend">
      {(Object.keys(uses) as HoleUse[]).filter((use) => use !== 'exchange' || hasExchanged).map((use) => (
        <li key={use}>
          <svg viewBox="0 0 18 18" width="18" height="18" aria-hidden="true">{uses[use].map((mark) => <MarkView key={mark.role + (mark.type === 'symbol' ? mark.shape : '')} mark={mark} />)}</svg>
          {say(`leads.use.${use}.long`)}
        </li>
      ))}
    </ul>
  );
}
