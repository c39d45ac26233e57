import { formatMeasure } from '#units';
import { scaleLinear } from 'd3-scale';
import type { AxesOptions, Mark, Scene } from './scene.ts';
import { type Standing, shorten, standingShape } from './symbol.ts';

/** A figure for each band under one mark; nothing where there is none. */
export interface BandSeries {
  readonly state: Standing;
  readonly label: string;
  readonly values: readonly (number | null)[];
}

export interface BandPlotOptions extends AxesOptions {
  /** What each band is called. */
  readonly bands: readonly string[];
  readonly series: readonly BandSeries[];
  /** What is wanted, and within which limits. */
  readonly wanted?: { readonly value: number; readonly lower: readonly number[]; readonly upper: readonly number[] } | undefined;
}

const MARGINS = { leftPx: 40, rightPx: 14, bottomPx: 34 } as const;
const TEXT_PX = 10;
const LINE_PX = 13;

type ToPx = (value: number) => number;

/** Plots figures by octave band, from nought up, over the band of what is wanted. */
export function bandPlot(options: BandPlotOptions): Scene {
  const { bands, series, wanted, widthPx, heightPx, title, description, yLabel, xLabel } = options;
  const topPx = 24 + LINE_PX * Math.max(0, series.length - 1) + 8;
  const highest = Math.max(...series.flatMap(({ values }) => values.flatMap((value) => value ?? [])), ...(wanted?.upper ?? []), 0.1);
  const y = scaleLinear().domain([0, highest * 1.05]).nice(4).range([heightPx - MARGINS.bottomPx, topPx]);
  const step = (widthPx - MARGINS.leftPx - MARGINS.rightPx) / bands.length;
  const x = (band: number): number => MARGINS.leftPx + (band + 0.5) * step;
  const marks: readonly Mark[] = [
    ...(wanted === undefined ? [] : drawWanted(wanted, x, y)),
    ...drawAxes(options, y, x),
    ...series.flatMap((one) => drawSeries(one, x, y)),
    ...series.flatMap(({ state, label }, index): readonly Mark[] => [
      { type: 'symbol', role: state, shape: standingShape[state], x: widthPx - MARGINS.rightPx - 4, y: 10.5 + LINE_PX * index, radiusPx: 3.2 },
      { type: 'text', role: 'note', x: widthPx - MARGINS.rightPx - 12, y: 14 + LINE_PX * index, text: label, anchor: 'end', sizePx: TEXT_PX },
    ]),
    { type: 'text', role: 'label', x: 4, y: 14, text: yLabel, anchor: 'start', sizePx: 12 },
    { type: 'text', role: 'note', x: widthPx - MARGINS.rightPx, y: heightPx - 4, text: xLabel, anchor: 'end', sizePx: TEXT_PX },
  ];
  return { widthPx, heightPx, title, description, marks, columns: [] };
}

function drawWanted({ value, lower, upper }: NonNullable<BandPlotOptions['wanted']>, x: ToPx, y: ToPx): readonly Mark[] {
  const point = (band: number, at: number): string => `${String(shorten(x(band)))},${String(shorten(y(at)))}`;
  const around = [...upper.map((at, band) => point(band, at)), ...lower.map((at, band) => point(band, at)).reverse()];
  return [
    { type: 'path', role: 'band', d: `M${around.join('L')}Z`, filled: true },
    { type: 'line', role: 'target', x1: x(0), x2: x(upper.length - 1), y1: y(value), y2: y(value) },
  ];
}

function drawSeries({ state, values }: BandSeries, x: ToPx, y: ToPx): readonly Mark[] {
  const points = values.flatMap((value, band) => (value === null ? [] : [{ band, x: shorten(x(band)), y: shorten(y(value)) }]));
  const lines = points.slice(1).flatMap((point, index): readonly Mark[] => {
    const before = points[index];
    return before?.band === point.band - 1 ? [{ type: 'line', role: state, x1: before.x, y1: before.y, x2: point.x, y2: point.y }] : [];
  });
  return [...lines, ...points.map((point): Mark => ({ type: 'symbol', role: state, shape: standingShape[state], x: point.x, y: point.y, radiusPx: 3.6 }))];
}

function drawAxes({ bands, widthPx, heightPx, locale }: BandPlotOptions, y: ReturnType<typeof scaleLinear<number, number>>, x: ToPx): readonly Mark[] {
  const ticks = y.ticks(5);
  const decimals = Math.max(0, -Math.floor(Math.log10((ticks[1] ?? 1) - (ticks[0] ?? 0)) + 1e-9));
  return [
    ...ticks.flatMap((value): readonly Mark[] => [
      { type: 'line', role: value === 0 ? 'axis' : 'grid', x1: MARGINS.leftPx, x2: widthPx - MARGINS.rightPx, y1: shorten(y(value)), y2: shorten(y(value)) },
      { type: 'text', role: 'note', x: MARGINS.leftPx - 5, y: shorten(y(value)) + 3.4, text: formatMeasure(value, { locale, decimals }), anchor: 'end', sizePx: TEXT_PX },
    ]),
    ...bands.map((name, band): Mark => ({ type: 'text', role: 'note', x: x(band), y: heightPx - MARGINS.bottomPx + 14, text: name, anchor: 'middle', sizePx: TEXT_PX })),
  ];
}
