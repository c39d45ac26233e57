import { type KeyNumber, type QuantityName, quantitiesOf } from '#instrument';
import type { NoteFigures } from '#strings';
import { useCallback, useEffect, useMemo, useRef } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { useDesk } from '../readings/desk.tsx';
import { type DerivedFigures, DerivedFeed } from '../readings/grid/derived-feed.ts';
import { type DerivedName, type GridColumn, figureColumns } from '../readings/grid/grid-columns.ts';
import type { GridLayout } from '../readings/grid/grid-layout.ts';
import { GridView } from '../readings/grid/grid-view.tsx';
import { Undecided } from '../readings/grid/undecided.tsx';
import { FilesRow } from '../readings/import/files-row.tsx';
import { PlotsAside, ScalesBeside } from './plots-aside.tsx';
import type { StateScale } from './state-scale.ts';
import { stringStory } from './stories.ts';

interface StringsGridProps {
  readonly scales: readonly StateScale[];
}

const stringQuantities = quantitiesOf('strings', 'key');
const usual: readonly QuantityName[] = ['speakingLengthMm', 'stringCount', 'wireDiameterMm', 'outerWrapMm'];
const worked: readonly DerivedName[] = ['tensionN', 'breakingPct', 'inharmonicityB'];
const columnsOf = (chosen: readonly QuantityName[], repeats: number): readonly GridColumn[] =>
  [...figureColumns(stringQuantities.filter((name) => chosen.includes(name)), repeats), ...worked.map((id): GridColumn => ({ kind: 'derived', id }))];

const pick = (figures: NoteFigures | undefined): DerivedFigures => (figures === undefined ? {} : { tensionN: figures.tensionN, breakingPct: figures.breakingPct, inharmonicityB: figures.inharmonicityB });

/** The grid of lengths and wires, with tension, share of breaking and inharmonicity following each figure, and the plots beside. */
export function StringsGrid({ scales }: StringsGridProps) {
  const say = useSay();
  const { compass, scale: terms } = usePiano();
  const { state } = useDesk();
  const own = scales.find((one) => one.state === state);
  const feed = useMemo(() => new DerivedFeed(), []);
  const latest = useRef({ own, terms });
  latest.current = { own, terms };
  useEffect(() => { feed.show(new Map(own?.analysis.notes.map(({ key, figures }) => [key, pick(figures)]))); }, [feed, own]);
  const story = useCallback((key: KeyNumber, name: DerivedName) => {
    const { own: scale, terms: asked } = latest.current;
    const note = scale?.analysis.notes.find((one) => one.key === key);
    if (scale === undefined || note?.figures === undefined) return undefined;
    return stringStory(say(`readings.derived.${name}`), name, { note, state: scale.state, terms: asked, readings: scale.readings, compass });
  }, [compass, say]);
  const layout = useMemo((): GridLayout => ({
    quantities: stringQuantities, usual, keptAs: 'wrestplank.columns.strings', repeats: 1, columnsOf, outcomes: ['missing'],
    derived: { subscribe: feed.subscribe, of: feed.of, story, hint: say('strings.derived.hint') },
    aside: (goToKey) => <PlotsAside onKey={goToKey} />,
  }), [feed, say, story]);
  return (
    <ScalesBeside value={scales}>
      <FilesRow />
      <Undecided />
      <GridView layout={layout} />
    </ScalesBeside>
  );
}
