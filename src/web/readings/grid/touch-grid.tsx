import { type KeyNumber, outcomes } from '#instrument';
import { useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useSay } from '../../language/use-say.ts';
import { useDesk } from '../desk.tsx';
import { columnsOf, keyQuantities, usualColumns } from './grid-columns.ts';
import { derivedStory } from './grid-commands.ts';
import type { GridLayout } from './grid-layout.ts';
import { GridView } from './grid-view.tsx';
import { LivePlots } from './live-plots.tsx';

/** The grid of weights, with balance and friction worked out and the plots beside following each figure. */
export function TouchGrid() {
  const say = useSay();
  const { compass } = usePiano();
  const { sheet, state, session } = useDesk();
  const { current } = session;
  const layout = useMemo((): GridLayout => ({
    quantities: keyQuantities, usual: usualColumns, keptAs: 'wrestplank.columns', repeats: current?.repeats ?? 1, columnsOf, outcomes,
    derived: {
      subscribe: sheet.subscribe,
      of: (key) => sheet.row(state, key),
      story: (key, name) => (name === 'balanceWeightG' || name === 'frictionG' ? derivedStory(name, { sheet, state, key, compass, say, session: current }) : undefined),
      hint: say('readings.derived.hint'),
    },
    aside: livePlots,
  }), [compass, current, say, sheet, state]);
  return <GridView layout={layout} />;
}

const livePlots = (goToKey: (key: KeyNumber) => void) => <LivePlots onKey={goToKey} />;
