import type { FloorPoint } from '#room';
import type { Mark, Scene } from './scene.ts';
import { shorten } from './symbol.ts';

/** A piano in a room: its middle, its case, where its tail points. */
export interface DrawnPiano {
  readonly kind: 'grand' | 'upright';
  readonly alongMm: number;
  readonly acrossMm: number;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly tailDeg: number;
}

export interface RoomSceneOptions {
  readonly points: readonly FloorPoint[];
  readonly piano?: DrawnPiano | undefined;
  /** Places worth a mark, with the word beside it. */
  readonly places: readonly { readonly alongMm: number; readonly acrossMm: number; readonly label: string }[];
  /** What each wall is called. */
  readonly wallName: (wall: number) => string;
  readonly lidName: string;
  /** Length of the scale, and its word. */
  readonly scale: { readonly mm: number; readonly label: string };
  readonly title: string;
  readonly description: string;
  readonly widthPx: number;
  readonly mostHeightPx: number;
}

const MARGIN_PX = 30;
const SIDE_PX = 52;
const FOOT_PX = 24;

/** Where a point of the room stands in the drawing, and back. */
export interface RoomScale {
  readonly pxPerMm: number;
  readonly toPx: (alongMm: number, acrossMm: number) => readonly [number, number];
  readonly toMm: (xPx: number, yPx: number) => readonly [number, number];
}

/** A room’s scale in a drawing so wide: as large as fits, both ways alike. */
export function roomScaleOf({ points, widthPx, mostHeightPx }: Pick<RoomSceneOptions, 'points' | 'widthPx' | 'mostHeightPx'>): RoomScale & { readonly heightPx: number } {
  const [xs, ys] = [points.map(({ alongMm }) => alongMm), points.map(({ acrossMm }) => acrossMm)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [length, width] = [Math.max(...xs) - left, Math.max(...ys) - top];
  const pxPerMm = Math.min((widthPx - 2 * SIDE_PX) / length, (mostHeightPx - 2 * MARGIN_PX - FOOT_PX) / width);
  const from = (widthPx - length * pxPerMm) / 2;
  return {
    pxPerMm, heightPx: Math.ceil(width * pxPerMm + 2 * MARGIN_PX + FOOT_PX),
    toPx: (alongMm, acrossMm) => [from + (alongMm - left) * pxPerMm, MARGIN_PX + (acrossMm - top) * pxPerMm],
    toMm: (xPx, yPx) => [left + (xPx - from) / pxPerMm, top + (yPx - MARGIN_PX) / pxPerMm],
  };
}

/** Draws a room from above, true to scale: walls with their names, the piano’s outline with the open side of its lid and the player’s place. */
export function roomScene(options: RoomSceneOptions): Scene {
  const { points, piano, places, widthPx, title, description } = options;
  const scale = roomScaleOf(options);
  const marks: readonly Mark[] = [
    { type: 'path', role: 'part', d: outlineOf(points.map(({ alongMm, acrossMm }) => scale.toPx(alongMm, acrossMm))), filled: false },
    ...nameWalls(options, scale),
    ...(piano === undefined ? [] : drawPiano(piano, options, scale)),
    ...places.flatMap(({ alongMm, acrossMm, label }): readonly Mark[] => {
      const [x, y] = scale.toPx(alongMm, acrossMm);
      return [{ type: 'symbol', role: 'rival', shape: 'plus', x, y, radiusPx: 4 }, { type: 'text', role: 'label', x: x + 7, y: y + 4, text: label, anchor: 'start', sizePx: 11 }];
    }),
    ...drawScale(options, scale),
  ];
  return { widthPx, heightPx: scale.heightPx, title, description, marks, columns: [] };
}

const outlineOf = (corners: readonly (readonly [number, number])[]): string => `M${corners.map(([x, y]) => `${String(shorten(x))},${String(shorten(y))}`).join('L')}Z`;

function nameWalls({ points, wallName }: RoomSceneOptions, { toPx }: RoomScale): readonly Mark[] {
  const corners = points.map(({ alongMm, acrossMm }) => toPx(alongMm, acrossMm));
  const turning = corners.reduce((sum, [x, y], index) => { const [nextX, nextY] = corners[(index + 1) % corners.length] ?? [x, y]; return sum + x * nextY - nextX * y; }, 0) >= 0 ? 1 : -1;
  return corners.map(([x, y], index): Mark => {
    const [nextX, nextY] = corners[(index + 1) % corners.length] ?? [x, y];
    const length = Math.hypot(nextX - x, nextY - y) || 1;
    const out = [(turning * (nextY - y)) / length, (-turning * (nextX - x)) / length] as const;
    return { type: 'text', role: 'note', x: shorten((x + nextX) / 2 + 9 * out[0]), y: shorten((y + nextY) / 2 + 14 * out[1] + 4), text: wallName(index + 1), anchor: out[0] < -0.5 ? 'end' : out[0] > 0.5 ? 'start' : 'middle', sizePx: 11 };
  });
}

/** A grand from above: straight along the bass, bent along the treble, the lid open to the player’s right. */
function drawPiano(piano: DrawnPiano, { lidName }: RoomSceneOptions, { toPx, pxPerMm }: RoomScale): readonly Mark[] {
  const { alongMm, acrossMm, lengthMm, widthMm, tailDeg } = piano;
  const [cos, sin] = [Math.cos((tailDeg * Math.PI) / 180), Math.sin((tailDeg * Math.PI) / 180)];
  const at = (ahead: number, right: number): readonly [number, number] => toPx(alongMm + ahead * lengthMm * cos - right * widthMm * sin, acrossMm + ahead * lengthMm * sin + right * widthMm * cos);
  const word = (ahead: number, right: number): string => at(ahead, right).map(shorten).join(',');
  const d = piano.kind === 'upright' ? `M${word(-0.5, -0.5)}L${word(0.5, -0.5)}L${word(0.5, 0.5)}L${word(-0.5, 0.5)}Z` : `M${word(-0.5, -0.5)}L${word(0.36, -0.5)}C${word(0.5, -0.5)} ${word(0.5, -0.12)} ${word(0.38, -0.08)}C${word(0.16, 0)} ${word(0.1, 0.5)} ${word(-0.18, 0.5)}L${word(-0.5, 0.5)}Z`;
  const [benchX, benchY] = at(-0.5 - 450 / lengthMm, 0);
  const [fromX, fromY] = at(0, 0.5);
  const lid = ((tailDeg + 90) * Math.PI) / 180;
  const reach = Math.max(22, 700 * pxPerMm);
  const [toX, toY] = [fromX + reach * Math.cos(lid), fromY + reach * Math.sin(lid)];
  return [
    { type: 'path', role: 'naturalKey', d, filled: true },
    { type: 'path', role: 'part', d, filled: false },
    { type: 'line', role: 'part', x1: at(-0.44, -0.44)[0], y1: at(-0.44, -0.44)[1], x2: at(-0.44, 0.44)[0], y2: at(-0.44, 0.44)[1] },
    { type: 'symbol', role: 'axis', shape: 'ring', x: benchX, y: benchY, radiusPx: Math.max(3, 170 * pxPerMm) },
    ...(piano.kind === 'upright' ? [] : [
    { type: 'line', role: 'limit', x1: fromX, y1: fromY, x2: toX, y2: toY },
    { type: 'text', role: 'note', x: shorten(toX + 6 * Math.cos(lid)), y: shorten(toY + 8 * Math.sin(lid) + 4), text: lidName, anchor: Math.cos(lid) < -0.5 ? 'end' : Math.cos(lid) > 0.5 ? 'start' : 'middle', sizePx: 10 },
    ] satisfies readonly Mark[]),
  ];
}

function drawScale({ scale: { mm, label }, widthPx }: RoomSceneOptions, { pxPerMm, heightPx }: RoomScale & { readonly heightPx: number }): readonly Mark[] {
  const [from, y] = [MARGIN_PX, heightPx - 12];
  const to = Math.min(widthPx - MARGIN_PX, from + mm * pxPerMm);
  return [
    { type: 'line', role: 'axis', x1: from, x2: to, y1: y, y2: y }, { type: 'line', role: 'axis', x1: from, x2: from, y1: y - 3, y2: y + 3 }, { type: 'line', role: 'axis', x1: to, x2: to, y1: y - 3, y2: y + 3 },
    { type: 'text', role: 'note', x: to + 6, y: y + 4, text: label, anchor: 'start', sizePx: 10 },
  ];
}
