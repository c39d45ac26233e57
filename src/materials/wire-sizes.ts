import { type Millimetres, millimetres } from '#units';

/** Two series give different wires under one gauge number, up to 2 % apart: 4 % of tension. */
export type WireSeries = 'inch' | 'metric';

/** A size of music wire: known by its diameter; the gauge number means something only with its series. */
export interface WireSize {
  readonly series: WireSeries;
  readonly gauge: number;
  readonly diameterMm: Millimetres;
  /** A key of the bibliography. */
  readonly source: string;
}

const MM_PER_THOUSANDTH_INCH = 0.0254;

const inchSize = (gauge: number, thousandths: number, source: string): WireSize => ({
  series: 'inch', gauge, diameterMm: millimetres(Number((thousandths * MM_PER_THOUSANDTH_INCH).toFixed(4))), source,
});
const metricSize = (gauge: number, diameter: number): WireSize => ({ series: 'metric', gauge, diameterMm: millimetres(diameter), source: 'TECH-LIST-2003' });

/** Gauge 12 to 22 in half sizes: (2g + 5)/1000 inch. */
const fine = Array.from({ length: 21 }, (_, index) => 12 + index / 2).map((gauge) => inchSize(gauge, 2 * gauge + 5, 'WIRE-CHART'));

/** Half sizes above 22 are midpoints, without a source of their own. */
const stout = ([[22.5, 50], [23, 51], [23.5, 53], [24, 55], [24.5, 57], [25, 59], [25.5, 61], [26, 63]] as const)
  .map(([gauge, thousandths]) => inchSize(gauge, thousandths, Number.isInteger(gauge) ? 'WIRE-CHART' : 'PRACTICE'));

/** Music wire by the inch series, thin to stout. @source WIRE-CHART */
export const inchWireSizes: readonly WireSize[] = [...fine, ...stout];

const METRIC = [
  [12, 0.725], [12.5, 0.75], [13, 0.775], [13.5, 0.8], [14, 0.825], [14.5, 0.85], [15, 0.875], [15.5, 0.9], [16, 0.925],
  [16.5, 0.95], [17, 0.975], [17.5, 1], [18, 1.025], [18.5, 1.05], [19, 1.075], [19.5, 1.1], [20, 1.125], [20.5, 1.15],
  [21, 1.175], [21.5, 1.2], [22, 1.225], [23, 1.3], [23.5, 1.35], [24, 1.4], [24.5, 1.45], [25, 1.5], [26, 1.6],
] as const;

/** Music wire by the metric series, thin to stout. @source TECH-LIST-2003 */
export const metricWireSizes: readonly WireSize[] = METRIC.map(([gauge, diameter]) => metricSize(gauge, diameter));

/** The sizes of one series, thin to stout. Always confirm by micrometer: published tables contradict each other at 24 and 25. */
export function wireSizesOf(series: WireSeries): readonly WireSize[] {
  return series === 'inch' ? inchWireSizes : metricWireSizes;
}
