import { type Part, type QuantityName, quantitiesOf } from '#instrument';
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

const layoutOf = (part: TakenPart): GridLayout => {
  const quantities = quantitiesOf(part, 'key');
  const columnsOf = (chosen: readonly QuantityName[], repeats: number): readonly GridColumn[] => figureColumns(quantities.filter((name) => chosen.includes(name)), repeats);
  return { quantities, usual: usual[part], keptAs: `wrestplank.columns.${part}`, repeats: 1, columnsOf, outcomes: ['missing'], derived: nothingDerived, aside: () => null };
};

const layouts: Readonly<Record<TakenPart, GridLayout>> = { leads: layoutOf('leads'), regulation: layoutOf('regulation'), hammers: layoutOf('hammers') };

/** The grid of what is taken down of one part of the action, key by key. */
export function PartGrid({ part }: { readonly part: TakenPart }) {
  return <div className="part-grid"><GridView layout={layouts[part]} /></div>;
}
