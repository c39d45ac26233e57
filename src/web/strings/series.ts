import type { ScaleTerms } from '#instrument';
import { wireSizesOf } from '#materials';
import { type Millimetres, millimetres } from '#units';

export type SeriesName = NonNullable<ScaleTerms['wireSeries']>;

/** The sizes of a series, thin to stout; of the shop, its wires for the use. Inch and metric sizes are never mixed. */
export function seriesSizes(terms: Pick<ScaleTerms, 'wires'> | null, series: SeriesName, use: 'plain' | 'core' | 'wrap'): readonly Millimetres[] {
  if (series !== 'shop') return use === 'wrap' ? [] : wireSizesOf(series).map(({ diameterMm }) => diameterMm);
  const sizes = (terms?.wires ?? []).filter((wire) => wire.use === use).map(({ diameterMm }) => diameterMm);
  return [...new Set(sizes)].toSorted((a, b) => a - b).map(millimetres);
}
