import { type QuantityName, quantitiesOf } from '#instrument';

/** A column of readings, or one worked out from them. */
export type GridColumn =
  | { readonly kind: 'figure'; readonly id: string; readonly quantity: QuantityName; readonly repeat: number; readonly repeats: number }
  | { readonly kind: 'derived'; readonly id: DerivedName };

/** Figures worked out beside what is read. */
export type DerivedName = 'balanceWeightG' | 'frictionG' | 'tensionN' | 'breakingPct' | 'inharmonicityB' | 'frontDeg' | 'rearDeg' | 'totalDeg' | 'forceN';

/** Weights read key by key, in the registry's order. */
export const keyQuantities: readonly QuantityName[] = quantitiesOf('touch', 'key');

/** What stands in the grid until other columns are chosen. */
export const usualColumns: readonly QuantityName[] = ['downWeightG', 'upWeightG'];

/** The columns of a grid: each quantity once for every repeat; balance and friction behind up weight once both weights are there. */
export function columnsOf(chosen: readonly QuantityName[], repeats: number): readonly GridColumn[] {
  const shown = keyQuantities.filter((name) => chosen.includes(name));
  const figures = figureColumns(shown, repeats);
  if (!shown.includes('downWeightG') || !shown.includes('upWeightG')) return figures;
  const behind = figures.findLastIndex((column) => column.kind === 'figure' && column.quantity === 'upWeightG') + 1;
  return [...figures.slice(0, behind), { kind: 'derived', id: 'balanceWeightG' }, { kind: 'derived', id: 'frictionG' }, ...figures.slice(behind)];
}

/** Each quantity once for every repeat, repeats of one side by side. */
export function figureColumns(shown: readonly QuantityName[], repeats: number): readonly GridColumn[] {
  const rounds = Array.from({ length: Math.max(1, repeats) }, (_, index) => index + 1);
  return shown.flatMap((quantity) => rounds.map((repeat): GridColumn => ({ kind: 'figure', id: `${quantity}/${String(repeat)}`, quantity, repeat, repeats: rounds.length })));
}
