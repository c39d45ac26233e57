import type { KeyNumber } from '#instrument';
import type { ScaleFigure } from '#plot';
import { createContext, useContext } from 'react';
import { useWidth } from '../leaves/use-width.ts';
import { ScalePlots } from './scale-plots.tsx';
import type { StateScale } from './state-scale.ts';

/** The scales that the plots beside a grid follow: they change with every figure, the grid's layout does not. */
export const ScalesBeside = createContext<readonly StateScale[]>([]);

const figures: readonly ScaleFigure[] = ['tension', 'breaking', 'inharmonicity'];

/** The plots that stand beside the grid of sizes and follow it. */
export function PlotsAside({ onKey }: { readonly onKey: (key: KeyNumber) => void }) {
  const scales = useContext(ScalesBeside);
  const [widthPx, ref] = useWidth(480);
  return (
    <div ref={ref} className="live-plots">
      <ScalePlots scales={scales} figures={figures} widthPx={widthPx} onSelect={onKey} />
    </div>
  );
}
