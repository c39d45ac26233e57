import { type KeyNumber, type QuantityName, quantitiesOf } from '#instrument';
import { useCallback, useEffect, useMemo, useRef } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { useDesk } from '../readings/desk.tsx';
import { DerivedFeed } from '../readings/grid/derived-feed.ts';
import { type DerivedName, type GridColumn, figureColumns } from '../readings/grid/grid-columns.ts';
import type { GridLayout } from '../readings/grid/grid-layout.ts';
import { GridView } from '../readings/grid/grid-view.tsx';
import { Undecided } from '../readings/grid/undecided.tsx';
import { FilesRow } from '../readings/import/files-row.tsx';
import { BearingAside, BelliesBeside } from './bearing-plots.tsx';
import { type BearingOutput, bearingStory } from './bearing-stories.ts';
import { Climate } from './climate.tsx';
import type { StateBelly } from './state-belly.ts';

const bellyQuantities = quantitiesOf('belly', 'key');
const usual: readonly QuantityName[] = ['backLengthMm', 'frontHeightMm', 'bridgeHeightMm', 'rearHeightMm'];
const worked = ['frontDeg', 'rearDeg', 'totalDeg', 'forceN'] as const satisfies readonly DerivedName[];
const isBearing = (name: DerivedName): name is BearingOutput => (worked as readonly DerivedName[]).includes(name);
const columnsOf = (chosen: readonly QuantityName[], repeats: number): readonly GridColumn[] =>
  [...figureColumns(bellyQuantities.filter((name) => chosen.includes(name)), repeats), ...worked.map((id): GridColumn => ({ kind: 'derived', id }))];

/** The grid of heights, lengths, angles and gauge readings, angle and force following each figure, the climate above and the plots beside. */
export function BearingGrid({ bellies }: { readonly bellies: readonly StateBelly[] }) {
  const say = useSay();
  const { compass } = usePiano();
  const { state } = useDesk();
  const own = bellies.find((one) => one.state === state);
  const feed = useMemo(() => new DerivedFeed(), []);
  const latest = useRef(own);
  latest.current = own;
  useEffect(() => { feed.show(new Map(own?.analysis.notes.map(({ key, figures = {} }) => [key, figures]))); }, [feed, own]);
  const story = useCallback((key: KeyNumber, name: DerivedName) => {
    const { current: belly } = latest;
    const note = belly?.analysis.notes.find((one) => one.key === key);
    if (belly === undefined || note === undefined || !isBearing(name)) return undefined;
    return bearingStory(say(`readings.derived.${name}`), name, { note, state: belly.state, readings: belly.readings, compass });
  }, [compass, say]);
  const layout = useMemo((): GridLayout => ({
    quantities: bellyQuantities, usual, keptAs: 'wrestplank.columns.belly', repeats: 1, columnsOf, outcomes: ['missing'],
    derived: { subscribe: feed.subscribe, of: feed.of, story, hint: say('belly.derived.hint') },
    aside: (goToKey) => <BearingAside onKey={goToKey} />,
  }), [feed, say, story]);
  return (
    <BelliesBeside value={bellies}>
      <Climate />
      <FilesRow />
      <Undecided />
      <GridView layout={layout} />
    </BelliesBeside>
  );
}
