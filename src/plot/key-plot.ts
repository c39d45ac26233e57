import type { Compass, KeyNumber } from '#instrument';
import { extent } from 'd3-array';
import { scaleLinear, scaleLog } from 'd3-scale';
import { area, line } from 'd3-shape';
import { type ValueScale, drawFrame, tickCountOf } from './frame.ts';
import { type KeyRow, drawKeyRow, layKeyRow, nameOctaves } from './key-row.ts';
import type { Mark, Scene } from './scene.ts';
import { type Standing, shorten, standingShape } from './symbol.ts';

/** One value for all keys, or a list by key (index = key − 1) with gaps where nothing is asked. */
export type PerKey = number | readonly (number | undefined)[];

/** What stands at a key: a value with its expanded uncertainty if known, or an outcome without a number. */
export interface KeyPoint {
  readonly key: KeyNumber;
  readonly value?: number | undefined;
  /** Half-width of the whisker: the expanded uncertainty, in the unit of the value. */
  readonly uncertainty?: number | undefined;
  /** True when the key was tried and gave no number: drawn as a cross on the top edge. */
  readonly outcome?: boolean | undefined;
}

export interface KeySeries {
  readonly state: Standing;
  /** Word of the legend. */
  readonly label: string;
  readonly points: readonly KeyPoint[];
}

export interface KeyPlotOptions {
  readonly compass: Compass;
  /** Earlier series are painted first. */
  readonly series: readonly KeySeries[];
  /** Tolerance band, in the unit of the values. */
  readonly band?: { readonly from: PerKey; readonly to: PerKey } | undefined;
  /** What is aimed at, drawn as a thin line. */
  readonly target?: PerKey | undefined;
  /** A bound that must not be passed, such as the least up weight. */
  readonly limit?: PerKey | undefined;
  /** Keys to be looked at: a wedge above the key row. */
  readonly flags?: ReadonlySet<KeyNumber> | undefined;
  readonly title: string;
  readonly description: string;
  /** Name of the quantity, drawn above the axis together with `unitSign`. */
  readonly yLabel: string;
  readonly unitSign: string;
  readonly locale: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly highlightKey?: KeyNumber | undefined;
  /** Fixes the value axis, so that two plots can be read against each other. */
  readonly domain?: readonly [number, number] | undefined;
  /** `log`: equal ratios are equally far apart; for figures above nought that span decades. */
  readonly axis?: 'linear' | 'log' | undefined;
  /** Leave out the legend where the page has its own. */
  readonly legend?: boolean | undefined;
}

/** Space around the drawing area; left and right are the same in every plot, so that keys align from plot to plot. */
export const plotMargins = { leftPx: 40, rightPx: 6, topPx: 30, bottomPx: 14, keyRowPx: 34, gapPx: 12 } as const;

/** Marks are as large as the keys allow, so that neighbours do not touch. */
const symbolRadiusOf = ({ columns }: KeyRow): number => Math.min(3.4, Math.max(1.6, (columns[0]?.widthPx ?? 0) * 0.26));

/**
 * Plots one quantity over the keyboard: states overlaid, each by its own mark, on the drawn row of keys.
 * Thin lines join neighbours only; a key without a number breaks them. Pure, a few milliseconds for 88 keys and three states.
 */
export function keyPlot(options: KeyPlotOptions): Scene {
  const { compass, widthPx, heightPx, title, description, highlightKey } = options;
  const { leftPx, rightPx, topPx, bottomPx, keyRowPx, gapPx } = plotMargins;
  const row = layKeyRow(compass, leftPx, widthPx - rightPx);
  const rowTopPx = heightPx - bottomPx - keyRowPx;
  const y = scaleOf(options, [rowTopPx - gapPx, topPx]);
  const marks = [
    ...drawHighlight(row, highlightKey, topPx, rowTopPx),
    ...drawBand(options, row, y),
    ...drawFrame({ ...options, row, y, topPx, bottomPx: rowTopPx - gapPx }),
    ...drawAim(options, row, y),
    ...options.series.flatMap((series) => drawSeries(series, row, y)),
    ...options.series.flatMap((series, index) => drawOutcomes(series, row, topPx + 5 + index * 10)),
    ...drawFlags(options.flags, row, rowTopPx - 5),
    ...drawKeyRow(row, { topPx: rowTopPx, heightPx: keyRowPx, highlightKey }),
    ...nameOctaves(row, heightPx - 3, 9),
  ];
  return { widthPx, heightPx, title, description, marks, columns: row.columns };
}

/** The values a per-key figure takes; numbers only. */
function valuesOf(figure: PerKey | undefined): readonly number[] {
  if (figure === undefined) return [];
  return typeof figure === 'number' ? [figure] : figure.filter((value) => value !== undefined);
}

const at = (figure: PerKey | undefined, key: KeyNumber): number | undefined => (typeof figure === 'number' ? figure : figure?.[key - 1]);

function scaleOf({ series, band, target, limit, domain, axis }: KeyPlotOptions, range: readonly [number, number]): ValueScale {
  const drawn = series.flatMap(({ points }) => points.flatMap(({ value, uncertainty = 0 }) => (value === undefined ? [] : [value - uncertainty, value + uncertainty])));
  const [low = 0, high = 1] = extent([...drawn, ...valuesOf(band?.from), ...valuesOf(band?.to), ...valuesOf(target), ...valuesOf(limit)]);
  if (axis === 'log') return logScaleOf(drawn, range);
  const spread = Math.max(high - low, 1);
  return scaleLinear().domain(domain ?? [low - spread * 0.04, high + spread * 0.08]).nice(2 * tickCountOf(range[1], range[0])).range(range);
}

/** Decades from the least to the greatest value drawn, with a little room; whiskers reaching down to nought do not stretch it. */
function logScaleOf(drawn: readonly number[], range: readonly [number, number]): ValueScale {
  const [low = 1, high = 10] = extent(drawn.filter((value) => value > 0));
  const room = Math.max(high / low, 2) ** 0.06;
  return scaleLog().domain([low / room, high * room]).range(range).clamp(true);
}

function drawHighlight({ columns }: KeyRow, key: KeyNumber | undefined, topPx: number, bottomPx: number): readonly Mark[] {
  const column = columns.find((one) => one.key === key);
  if (column === undefined) return [];
  return [{ type: 'rect', role: 'highlight', key: column.key, x: column.xPx, y: topPx, width: column.widthPx, height: bottomPx - topPx }];
}

/** Keys with the outer edges of the keyboard added, so that bands and aims reach the full width. */
function stretched({ columns }: KeyRow): readonly { readonly key: KeyNumber; readonly x: number }[] {
  return columns.flatMap(({ key, centrePx, xPx, widthPx }, index) => [
    ...(index === 0 ? [{ key, x: xPx }] : []),
    { key, x: centrePx },
    ...(index === columns.length - 1 ? [{ key, x: xPx + widthPx }] : []),
  ]);
}

function drawBand({ band }: KeyPlotOptions, row: KeyRow, y: ValueScale): readonly Mark[] {
  if (band === undefined) return [];
  const shape = area<{ key: KeyNumber; x: number }>()
    .defined(({ key }) => at(band.from, key) !== undefined && at(band.to, key) !== undefined)
    .x(({ x }) => shorten(x))
    .y0(({ key }) => shorten(y(at(band.from, key) ?? 0)))
    .y1(({ key }) => shorten(y(at(band.to, key) ?? 0)));
  return pathOf('band', shape([...stretched(row)]), true);
}

function drawAim({ target, limit }: KeyPlotOptions, row: KeyRow, y: ValueScale): readonly Mark[] {
  const drawn = (role: 'target' | 'limit', figure: PerKey | undefined): readonly Mark[] => {
    if (figure === undefined) return [];
    const shape = line<{ key: KeyNumber; x: number }>()
      .defined(({ key }) => at(figure, key) !== undefined).x(({ x }) => shorten(x)).y(({ key }) => shorten(y(at(figure, key) ?? 0)));
    const lone = row.columns.filter(({ key }, index) => index > 0 && index < row.columns.length - 1 && at(figure, key) !== undefined && at(figure, key - 1) === undefined && at(figure, key + 1) === undefined);
    const ticks = lone.map(({ key, xPx, widthPx }): Mark => ({ type: 'line', role, x1: xPx, x2: xPx + widthPx, y1: y(at(figure, key) ?? 0), y2: y(at(figure, key) ?? 0) }));
    return [...pathOf(role, shape([...stretched(row)]), false), ...ticks];
  };
  return [...drawn('target', target), ...drawn('limit', limit)];
}

function drawSeries({ state, points }: KeySeries, row: KeyRow, y: ValueScale): readonly Mark[] {
  const { columns } = row;
  const radiusPx = symbolRadiusOf(row);
  const byKey = new Map(points.map((point) => [point.key, point]));
  const join = line<(typeof columns)[number]>()
    .defined(({ key }) => byKey.get(key)?.value !== undefined)
    .x(({ centrePx }) => shorten(centrePx)).y(({ key }) => shorten(y(byKey.get(key)?.value ?? 0)));
  const standing = columns.flatMap(({ key, centrePx }) => {
    const point = byKey.get(key);
    return point?.value === undefined ? [] : [{ key, x: centrePx, value: point.value, uncertainty: point.uncertainty }];
  });
  return [
    ...standing.flatMap(({ key, x, value, uncertainty }): readonly Mark[] =>
      uncertainty === undefined ? [] : [{ type: 'line', role: 'uncertainty', key, x1: x, x2: x, y1: y(value + uncertainty), y2: y(value - uncertainty) }]),
    ...pathOf(state, join([...columns]), false),
    ...standing.map(({ key, x, value }): Mark => ({ type: 'symbol', role: state, shape: standingShape[state], key, x, y: y(value), radiusPx })),
  ];
}

/** The state's own mark struck through, on the top edge: tried, and no number came of it. */
function drawOutcomes({ state, points }: KeySeries, row: KeyRow, yPx: number): readonly Mark[] {
  const radiusPx = symbolRadiusOf(row);
  return points.filter(({ outcome }) => outcome === true).flatMap(({ key }): readonly Mark[] => {
    const place = { type: 'symbol', key, x: row.columns[key - 1]?.centrePx ?? 0, y: yPx } as const;
    return [{ ...place, role: state, shape: standingShape[state], radiusPx }, { ...place, role: 'outcome', shape: 'cross', radiusPx: radiusPx * 1.5 }];
  });
}

function drawFlags(flags: ReadonlySet<KeyNumber> | undefined, { columns }: KeyRow, yPx: number): readonly Mark[] {
  return columns.filter(({ key }) => flags?.has(key) === true)
    .map(({ key, centrePx }): Mark => ({ type: 'symbol', role: 'flag', shape: 'wedgeDown', key, x: centrePx, y: yPx, radiusPx: 2.6 }));
}

/** A path mark, or none: d3 answers null for a shape without points, and an empty string when none is defined. */
function pathOf(role: 'band' | 'target' | 'limit' | Standing, d: string | null, filled: boolean): readonly Mark[] {
  return d === null || d === '' ? [] : [{ type: 'path', role, d, filled }];
}
