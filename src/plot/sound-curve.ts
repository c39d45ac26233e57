import type { State } from '#instrument';
import { formatMeasure } from '#units';
import { extent } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import type { AxesOptions, Mark, Scene } from './scene.ts';
import { shorten, stateShape } from './symbol.ts';

/** A curve of one state, and points worth a mark on it. */
export interface SoundSeries {
  readonly state: State;
  readonly label: string;
  readonly points: readonly { readonly x: number; readonly y: number }[];
  readonly marked?: readonly { readonly x: number; readonly y: number }[];
}

export interface SoundCurveOptions extends AxesOptions {
  /** Earlier states first. */
  readonly series: readonly SoundSeries[];
  /** Places along the axis worth a word, upright lines. */
  readonly places: readonly { readonly x: number; readonly label: string }[];
}

const MARGINS = { leftPx: 46, rightPx: 12, topPx: 34, bottomPx: 32 } as const;
const TEXT_PX = 10;

type Linear = ReturnType<typeof scaleLinear<number, number>>;

/** A curve of a sound over time or frequency, in decibels; states overlaid by their own marks, partials or moments named along the axis. */
export function soundCurve(options: SoundCurveOptions): Scene {
  const { series, widthPx, heightPx, title, description, xLabel, yLabel } = options;
  const all = series.flatMap(({ points, marked = [] }) => [...points, ...marked]);
  const [left = 0, right = 1] = extent(all, (point) => point.x);
  const [low = -1, high = 0] = extent(all, (point) => point.y);
  const x = scaleLinear().domain([left, right]).range([MARGINS.leftPx, widthPx - MARGINS.rightPx]);
  const y = scaleLinear().domain([low, high + (high - low) * 0.06]).nice(4).range([heightPx - MARGINS.bottomPx, MARGINS.topPx]);
  const marks: readonly Mark[] = [
    ...drawTicks(options, x, y),
    ...drawPlaces(options, x),
    ...series.flatMap((one) => drawSeries(one, x, y)),
    ...series.map(({ state, label }, index): Mark => ({ type: 'text', role: 'note', x: widthPx - MARGINS.rightPx, y: 14 + 12 * index, text: `${state === 'found' ? '○' : state === 'planned' ? '◇' : '■'} ${label}`, anchor: 'end', sizePx: TEXT_PX })),
    { type: 'text', role: 'label', x: 4, y: 14, text: yLabel, anchor: 'start', sizePx: 12 },
    { type: 'text', role: 'note', x: widthPx - MARGINS.rightPx, y: heightPx - 4, text: xLabel, anchor: 'end', sizePx: TEXT_PX },
  ];
  return { widthPx, heightPx, title, description, marks, columns: [] };
}

function drawSeries({ state, points, marked = [] }: SoundSeries, x: Linear, y: Linear): readonly Mark[] {
  const path = line<{ readonly x: number; readonly y: number }>().x((point) => shorten(x(point.x))).y((point) => shorten(y(point.y)))([...points]);
  return [
    ...(path === null || path === '' ? [] : [{ type: 'path', role: state, d: path, filled: false } as const]),
    ...marked.map((point): Mark => ({ type: 'symbol', role: state, shape: stateShape[state], x: shorten(x(point.x)), y: shorten(y(point.y)), radiusPx: 3 })),
  ];
}

function drawPlaces({ places, heightPx }: SoundCurveOptions, x: Linear): readonly Mark[] {
  return places.flatMap(({ x: place, label }): readonly Mark[] => [
    { type: 'line', role: 'octave', x1: shorten(x(place)), x2: shorten(x(place)), y1: MARGINS.topPx, y2: heightPx - MARGINS.bottomPx },
    { type: 'text', role: 'note', x: shorten(x(place)), y: MARGINS.topPx - 3, text: label, anchor: 'middle', sizePx: 8 },
  ]);
}

function drawTicks({ locale, widthPx, heightPx }: SoundCurveOptions, x: Linear, y: Linear): readonly Mark[] {
  const decimalsOf = ([first = 0, second = 1]: readonly number[]): number => Math.max(0, -Math.floor(Math.log10(Math.abs(second - first)) + 1e-9));
  const [across, up] = [x.ticks(6), y.ticks(4)];
  const word = (value: number, ticks: readonly number[]): string => formatMeasure(value, { locale, decimals: decimalsOf(ticks) });
  return [
    ...up.flatMap((value): readonly Mark[] => [
      { type: 'line', role: 'grid', x1: MARGINS.leftPx, x2: widthPx - MARGINS.rightPx, y1: shorten(y(value)), y2: shorten(y(value)) },
      { type: 'text', role: 'note', x: MARGINS.leftPx - 5, y: shorten(y(value)) + 3.4, text: word(value, up), anchor: 'end', sizePx: TEXT_PX },
    ]),
    ...across.map((value): Mark => ({ type: 'text', role: 'note', x: shorten(x(value)), y: heightPx - MARGINS.bottomPx + 13, text: word(value, across), anchor: 'middle', sizePx: TEXT_PX })),
  ];
}
