import type { Drawing } from '#action';
import type { Mark, Role, Scene } from './scene.ts';
import { shorten } from './symbol.ts';

export interface StrokeSceneOptions {
  readonly drawing: Drawing;
  readonly stringHeightMm: number;
  /** Left, right, lowest and highest, so that all positions of a stroke stand in the same frame. */
  readonly frameMm: { readonly left: number; readonly right: number; readonly low: number; readonly high: number };
  readonly widthPx: number;
  readonly title: string;
  readonly description: string;
  readonly stringWord: string;
}

const ROLE: Readonly<Record<Drawing['segments'][number]['part'], Role>> = {
  key: 'part', capstan: 'part', heel: 'part', wippen: 'part', jack: 'partLit', toe: 'partLit', jackTop: 'partLit', roller: 'part', shank: 'part', head: 'part',
};

/** Room above and below, so that word and pivot stand inside on a narrow page too. */
const ROOM_MM = 22;

/** The frame that holds every position of a stroke, with a little room. */
export function frameOf(drawings: readonly Drawing[], stringHeightMm: number): StrokeSceneOptions['frameMm'] {
  const points = drawings.flatMap(({ segments }) => segments.flatMap(({ from, to }) => [from, to]));
  const [xs, ys] = [points.map(({ xMm }) => xMm), points.map(({ yMm }) => yMm)];
  return { left: Math.min(...xs) - 8, right: Math.max(...xs) + 12, low: Math.min(0, ...ys) - ROOM_MM, high: Math.max(stringHeightMm, ...ys) + ROOM_MM };
}

/** One position of an action, to scale, under its string: the player is on the left. */
export function strokeScene({ drawing, stringHeightMm, frameMm, widthPx, title, description, stringWord }: StrokeSceneOptions): Scene {
  const { left, right, low, high } = frameMm;
  const scale = widthPx / (right - left);
  const [x, y] = [(mm: number): number => shorten((mm - left) * scale), (mm: number): number => shorten((high - mm) * scale)];
  const marks: readonly Mark[] = [
    { type: 'line', role: 'grid', x1: x(left), x2: x(right), y1: y(0), y2: y(0) },
    { type: 'line', role: 'axis', x1: x(0), x2: x(right), y1: y(stringHeightMm), y2: y(stringHeightMm) },
    { type: 'text', role: 'note', x: x(4), y: y(stringHeightMm) - 5, text: stringWord, anchor: 'start', sizePx: 10 },
    ...drawing.segments.map(({ part, from, to }): Mark => ({ type: 'line', role: ROLE[part], x1: x(from.xMm), y1: y(from.yMm), x2: x(to.xMm), y2: y(to.yMm) })),
    ...drawing.circles.map(({ part, centre, radiusMm }): Mark => ({ type: 'symbol', role: ROLE[part], shape: 'ring', x: x(centre.xMm), y: y(centre.yMm), radiusPx: radiusMm * scale })),
    { type: 'symbol', role: 'label', shape: 'wedgeUp', x: x(0), y: y(-1) + 4, radiusPx: 4 },
  ];
  return { widthPx, heightPx: shorten((high - low) * scale), title, description, marks, columns: [] };
}
