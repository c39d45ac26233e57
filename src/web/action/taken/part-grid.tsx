import { type Part, type QuantityName, quantitiesOf } from '#instrument';
import { usePiano } from '../../api/piano.tsx';
import { type GridColumn, figureColumns } from '../../readings/grid/grid-columns.ts';
import type { GridDerived, GridLayout } from '../../readings/grid/grid-layout.ts';
import { GridView } from '../../readings/grid/grid-view.tsx';

type TakenPart = Extract<Part, 'leads' | 'regulation' | 'hammers'>;

const usual: Readonly<Record<TakenPart, readonly QuantityName[]>> = {
  leads: ['lead1PositionMm', 'lead1DiameterMm', 'lead2PositionMm', 'lead2DiameterMm', 'lead3PositionMm', 'lead3DiameterMm'],
  regulation: ['blowMm', 'letOffMm', 'dropMm', 'dipMm', 'aftertouchMm', 'checkMm'],
  hammers: ['strikeDistanceMm', 'boreMm', 'rakeDeg', 'feltOverWoodMm'],
};

const NONE = {};
const nothingDerived: GridDerived = { subscribe: () => () => undefined, of: () => NONE, story: () => undefined, hint: '' };

const layoutOf = (part: TakenPart, keptAs: string = part, shown: readonly QuantityName[] = usual[part]): GridLayout => {
  const quantities = quantitiesOf(part, 'key');
  const columnsOf = (chosen: readonly QuantityName[], repeats: number): readonly GridColumn[] => figureColumns(quantities.filter((name) => chosen.includes(name)), repeats);
  return { quantities, usual: shown, keptAs: `wrestplank.columns.${keptAs}`, repeats: 1, columnsOf, outcomes: ['missing'], derived: nothingDerived, aside: () => null };
};

const layouts: Readonly<Record<TakenPart, GridLayout>> = { leads: layoutOf('leads'), regulation: layoutOf('regulation'), hammers: layoutOf('hammers') };

/** An upright has no drop, but springs and dampers. */
const uprightRegulation = layoutOf('regulation', 'regulation.upright', ['blowMm', 'letOffMm', 'dipMm', 'aftertouchMm', 'checkMm', 'springTorqueGMm', 'damperG']);

/** The grid of what is taken down of one part of the action, key by key. */
export function PartGrid({ part }: { readonly part: TakenPart }) {
  const { instrument: { kind } } = usePiano();
  return <div className="part-grid"><GridView layout={part === 'regulation' && kind === 'upright' ? uprightRegulation : layouts[part]} /></div>;
}
