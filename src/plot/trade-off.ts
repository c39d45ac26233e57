import { extent } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { formatMeasure } from '#units';
import type { AxesOptions, Mark, Scene } from './scene.ts';
import { shorten } from './symbol.ts';

/** One way to weigh two aims against each other, and what either comes to. */
export interface TradeOffPoint {
  readonly x: number;
  readonly y: number;
  readonly label: string;
}

export interface TradeOffOptions extends AxesOptions {
  /** In the order of the weights: the curve runs through them. */
  readonly points: readonly TradeOffPoint[];
  /** Place of the one chosen. */
  readonly chosen?: number | undefined;
  /** How things stand, with the word it goes by. */
  readonly standing?: TradeOffPoint | undefined;
}

/** A drawing of a trade-off with where its points lie, for pointing. */
export interface TradeOffScene extends Scene {
  readonly points: readonly { readonly xPx: number; readonly yPx: number }[];
}

const MARGINS = { leftPx: 46, rightPx: 14, topPx: 30, bottomPx: 38 } as const;
const TEXT_PX = 10;

/** Draws two aims against each other, less of both is better: the curve of what can be had, its points by number, and what stands. */
export function tradeOffPlot(options: TradeOffOptions): TradeOffScene {
  const { points, chosen, standing, widthPx, heightPx, title, description } = options;
  const all = [...points, ...(standing === undefined ? [] : [standing])];
  const scaleOf = (values: readonly number[], range: readonly [number, number]) => {
    const [low = 0, high = 1] = extent(values);
    const room = Math.max(high - low, high * 0.05, 1e-9) * 0.08;
    return scaleLinear().domain([Math.max(0, low - room), high + room]).nice(6).range(range);
  };
  const x = scaleOf(all.map((point) => point.x), [MARGINS.leftPx, widthPx - MARGINS.rightPx]);
  const y = scaleOf(all.map((point) => point.y), [heightPx - MARGINS.bottomPx, MARGINS.topPx]);
  const placed = points.map((point) => ({ xPx: shorten(x(point.x)), yPx: shorten(y(point.y)) }));
  const curve = line<(typeof placed)[number]>().x(({ xPx }) => xPx).y(({ yPx }) => yPx)([...placed]);
  const named = namedOf(placed, chosen);
  const marks: readonly Mark[] = [
    ...drawAxes(options, x, y),
    ...(curve === null || placed.length < 2 ? [] : [{ type: 'path' as const, role: 'target' as const, d: curve, filled: false }]),
    ...(standing === undefined ? [] : drawStanding(standing, { xPx: x(standing.x), yPx: y(standing.y) })),
    ...placed.flatMap(({ xPx, yPx }, place): readonly Mark[] => [
      { type: 'symbol', role: 'planned', shape: 'diamond', x: xPx, y: yPx, radiusPx: place === chosen ? 6 : 3.4 },
      ...(place === chosen ? [{ type: 'symbol' as const, role: 'label' as const, shape: 'dot' as const, x: xPx, y: yPx, radiusPx: 4 }] : []),
      ...(named.has(place) ? [{ type: 'text' as const, role: 'label' as const, x: shorten(xPx + 8), y: shorten(yPx - 6), text: points[place]?.label ?? '', anchor: 'start' as const, sizePx: TEXT_PX }] : []),
    ]),
  ];
  return { widthPx, heightPx, title, description, marks, columns: [], points: placed };
}

/** Points with room for their number, the chosen one before all others. */
function namedOf(placed: TradeOffScene['points'], chosen: number | undefined): ReadonlySet<number> {
  const order = placed.map((_, place) => place).toSorted((a, b) => Number(b === chosen) - Number(a === chosen));
  const named: number[] = [];
  for (const place of order) {
    const isFree = named.every((other) => Math.hypot((placed[other]?.xPx ?? 0) - (placed[place]?.xPx ?? 0), (placed[other]?.yPx ?? 0) - (placed[place]?.yPx ?? 0)) > 1.3 * TEXT_PX);
    if (isFree) named.push(place);
  }
  return new Set(named);
}

function drawStanding({ label }: TradeOffPoint, { xPx, yPx }: { readonly xPx: number; readonly yPx: number }): readonly Mark[] {
  return [
    { type: 'symbol', role: 'found', shape: 'ring', x: shorten(xPx), y: shorten(yPx), radiusPx: 4 },
    { type: 'text', role: 'note', x: shorten(xPx) - 8, y: shorten(yPx) + 3.4, text: label, anchor: 'end', sizePx: TEXT_PX },
  ];
}

type Linear = ReturnType<typeof scaleLinear<number, number>>;

function drawAxes({ xLabel, yLabel, widthPx, heightPx, locale }: TradeOffOptions, x: Linear, y: Linear): readonly Mark[] {
  const [left, right, top, bottom] = [MARGINS.leftPx, widthPx - MARGINS.rightPx, MARGINS.topPx, heightPx - MARGINS.bottomPx];
  const decimalsOf = (ticks: readonly number[]): number => Math.max(0, -Math.floor(Math.log10(Math.abs((ticks[1] ?? 1) - (ticks[0] ?? 0))) + 1e-9));
  const [xTicks, yTicks] = [x.ticks(6), y.ticks(6)];
  return [
    ...xTicks.flatMap((value): readonly Mark[] => [
      { type: 'line', role: 'grid', x1: shorten(x(value)), x2: shorten(x(value)), y1: top, y2: bottom },
      { type: 'text', role: 'note', x: shorten(x(value)), y: bottom + 13, text: formatMeasure(value, { locale, decimals: decimalsOf(xTicks) }), anchor: 'middle', sizePx: TEXT_PX },
    ]),
    ...yTicks.flatMap((value): readonly Mark[] => [
      { type: 'line', role: 'grid', x1: left, x2: right, y1: shorten(y(value)), y2: shorten(y(value)) },
      { type: 'text', role: 'note', x: left - 6, y: shorten(y(value)) + 3.4, text: formatMeasure(value, { locale, decimals: decimalsOf(yTicks) }), anchor: 'end', sizePx: TEXT_PX },
    ]),
    { type: 'text', role: 'label', x: 4, y: 14, text: yLabel, anchor: 'start', sizePx: 12 },
    { type: 'text', role: 'label', x: right, y: heightPx - 6, text: xLabel, anchor: 'end', sizePx: 12 },
  ];
}

/** The point of a trade-off nearest to a place of the drawing. */
export function pointNear({ points }: Pick<TradeOffScene, 'points'>, xPx: number, yPx: number): number | undefined {
  const off = (place: number): number => Math.hypot((points[place]?.xPx ?? 0) - xPx, (points[place]?.yPx ?? 0) - yPx);
  return points.map((_, place) => place).toSorted((a, b) => off(a) - off(b))[0];
}
