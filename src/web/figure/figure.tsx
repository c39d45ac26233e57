import type { UnitId } from '#units';
import type { ReactNode } from 'react';
import { useFigures, useSay } from '../language/use-say.ts';
import { type FigureStory, openFigure } from './figure-store.ts';
import '../leaves/leaves.css';

interface FigureProps {
  readonly value: number;
  readonly decimals: number;
  readonly unit?: UnitId;
  readonly signed?: boolean;
  /** Tells how the figure was made; asked only when it is opened. */
  readonly story: () => FigureStory;
}

/** A derived figure that can be opened back to its readings, formula and source. */
export function Figure({ value, decimals, unit, signed = false, story }: FigureProps) {
  const figure = useFigures();
  return <OpenFigure story={story}>{figure(value, decimals, unit, signed)}</OpenFigure>;
}

/** The same for what is told in words of its own, such as money. */
export function OpenFigure({ story, children }: Pick<FigureProps, 'story'> & { readonly children: ReactNode }) {
  const say = useSay();
  return <button type="button" className="figure" title={say('shell.figure.open')} onClick={() => { openFigure(story()); }}>{children}</button>;
}
