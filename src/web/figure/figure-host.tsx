import { Suspense, lazy } from 'react';
import { openFigure, useOpenFigure } from './figure-store.ts';

const FigurePanel = lazy(() => import('./figure-panel.tsx'));

/** Where the panel that opens a figure appears; fetched when first asked for. */
export function FigureHost() {
  const story = useOpenFigure();
  if (story === undefined) return null;
  return (
    <Suspense fallback={null}>
      <FigurePanel story={story} onClose={() => { openFigure(undefined); }} />
    </Suspense>
  );
}
