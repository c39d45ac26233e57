import type { UnitId } from '#units';
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
  const say = useSay();
  const figure = useFigures();
  return (
    <button type="button" className="figure" title={say('shell.figure.open')} onClick={() => { openFigure(story()); }}>
      {figure(value, decimals, unit, signed)}
    </button>
  );
}
