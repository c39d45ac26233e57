import { extent } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { formatMeasure } from '#units';
import type { AxesOptions, Mark, Scene } from './scene.ts';
import { shorten } from './symbol.ts';

export interface StrokeCurveOptions extends AxesOptions {
  /** Values over key travel; a gap where the key does not drive the hammer. */
  readonly points: readonly { readonly x: number; readonly y: number | undefined }[];
  /** Places of the stroke worth a word, upright lines. */
  readonly places: readonly { readonly x: number; readonly label: string }[];
  /** Values worth a word, level lines. */
  readonly levels: readonly { readonly y: number; readonly label: string }[];
  /** Where the stroke stands now. */
  readonly at: { readonly x: number; readonly y: number | undefined };
}

const MARGINS = { leftPx: 46, rightPx: 12, topPx: 34, bottomPx: 32 } as const;
const TEXT_PX = 10;

/** A figure of the action over the travel of its key, with let-off and bottom marked and the position shown. */
export function strokeCurve(options: StrokeCurveOptions): Scene {
  const { points, places, levels, at, widthPx, heightPx, title, description, xLabel, yLabel } = options;
  const [low = 0, high = 1] = extent([...points.flatMap(({ y }) => y ?? []), ...levels.map(({ y }) => y)]);
  const room = Math.max((high - low) * 0.08, Math.abs(high) * 0.01, 1e-6);
  const x = scaleLinear().domain([0, Math.max(...points.map((point) => point.x))]).range([MARGINS.leftPx, widthPx - MARGINS.rightPx]);
  const floor = low >= 0 ? Math.max(0, low - room) : low - room;
  const y = scaleLinear().domain([floor, high + room]).nice(4).range([heightPx - MARGINS.bottomPx, MARGINS.topPx]);
  const path = line<(typeof points)[number]>().defined((point) => point.y !== undefined).x((point) => shorten(x(point.x))).y((point) => shorten(y(point.y ?? 0)))([...points]);
  const [top, foot, left, right] = [MARGINS.topPx, heightPx - MARGINS.bottomPx, MARGINS.leftPx, widthPx - MARGINS.rightPx];
  const marks: readonly Mark[] = [
    ...drawTicks(options, x, y),
    ...places.flatMap(({ x: place, label }, index): readonly Mark[] => [
      { type: 'line', role: 'limit', x1: shorten(x(place)), x2: shorten(x(place)), y1: top, y2: foot },
      { type: 'text', role: 'note', x: shorten(x(place)) - 3, y: top + 9 + 11 * index, text: label, anchor: 'end', sizePx: TEXT_PX },
    ]),
    ...levels.flatMap(({ y: level, label }): readonly Mark[] => [
      { type: 'line', role: 'limit', x1: left, x2: right, y1: shorten(y(level)), y2: shorten(y(level)) },
      { type: 'text', role: 'note', x: left + 4, y: shorten(y(level)) - 3, text: label, anchor: 'start', sizePx: TEXT_PX },
    ]),
    ...(path === null || path === '' ? [] : [{ type: 'path', role: 'part', d: path, filled: false } as const]),
    ...(at.y === undefined ? [] : [{ type: 'symbol', role: 'partLit', shape: 'ring', x: shorten(x(at.x)), y: shorten(y(at.y)), radiusPx: 4 } as const]),
    { type: 'text', role: 'label', x: 4, y: 14, text: yLabel, anchor: 'start', sizePx: 12 },
    { type: 'text', role: 'note', x: right, y: heightPx - 4, text: xLabel, anchor: 'end', sizePx: TEXT_PX },
  ];
  return { widthPx, heightPx, title, description, marks, columns: [] };
}

type Linear = ReturnType<typeof scaleLinear<number, number>>;

function drawTicks({ locale, widthPx, heightPx }: StrokeCurveOptions, x: Linear, y: Linear): readonly Mark[] {
  const decimalsOf = (ticks: readonly number[]): number => Math.max(0, -Math.floor(Math.log10(Math.abs((ticks[1] ?? 1) - (ticks[0] ?? 0))) + 1e-9));
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
