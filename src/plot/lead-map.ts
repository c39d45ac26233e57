import type { Compass, KeyNumber } from '#instrument';
import { scaleLinear } from 'd3-scale';
import { drawFrame } from './frame.ts';
import { plotMargins } from './key-plot.ts';
import { drawKeyRow, layKeyRow, nameOctaves } from './key-row.ts';
import type { HoleUse } from './key-strip.ts';
import type { Mark, Scene } from './scene.ts';

export interface LeadMapOptions {
  readonly compass: Compass;
  readonly keys: readonly { readonly key: KeyNumber; readonly holes: readonly { readonly positionMm: number; readonly diameterMm: number; readonly use: HoleUse }[] }[];
  readonly widthPx: number;
  readonly locale: string;
  readonly title: string;
  readonly description: string;
  readonly yLabel: string;
}

/**
 * The leads of the whole keyboard over its keys, across and along at the same scale: how far every hole lies from the balance point,
 * as large as it is drilled. Refilled holes as found are full, leads drilled out have a ring within, those of another metal a diamond, plugged ones are crossed, new ones a diamond.
 */
export function leadMap({ compass, keys, widthPx, locale, title, description, yLabel }: LeadMapOptions): Scene {
  const { leftPx, rightPx, topPx, bottomPx, keyRowPx, gapPx } = plotMargins;
  const row = layKeyRow(compass, leftPx, widthPx - rightPx);
  const places = keys.flatMap(({ holes }) => holes.map(({ positionMm }) => positionMm));
  const [low, high] = [Math.min(0, ...places) - 10, Math.max(100, ...places) + 15];
  const foot = topPx + (high - low) * row.pxPerMm;
  const y = scaleLinear().domain([low, high]).range([foot, topPx]);
  const heightPx = foot + gapPx + keyRowPx + bottomPx;
  const marks: readonly Mark[] = [
    ...drawFrame({ row, y, topPx, bottomPx: foot, widthPx, yLabel, unitSign: 'mm', locale, series: [], legend: false }),
    ...keys.flatMap(({ key, holes }) => holes.flatMap(({ positionMm, diameterMm, use }) => drawHole(use, { key, x: row.columns[key - 1]?.centrePx ?? 0, y: y(positionMm), radiusPx: (diameterMm / 2) * row.pxPerMm }))),
    ...drawKeyRow(row, { topPx: foot + gapPx, heightPx: keyRowPx }),
    ...nameOctaves(row, heightPx - 3, 9),
  ];
  return { widthPx, heightPx, title, description, marks, columns: row.columns };
}

/** What stands inside an old hole, and how large beside it. */
const INSIDE = {
  refill: { role: 'found', shape: 'dot', share: 1 }, trim: { role: 'planned', shape: 'ring', share: 0.5 }, exchange: { role: 'planned', shape: 'diamond', share: 0.6 }, plug: { role: 'found', shape: 'cross', share: 0.6 },
} as const;

function drawHole(use: HoleUse, at: { readonly key: KeyNumber; readonly x: number; readonly y: number; readonly radiusPx: number }): readonly Mark[] {
  if (use === 'new') return [{ type: 'symbol', role: 'planned', shape: 'diamond', ...at, radiusPx: at.radiusPx / 1.25 }];
  return [{ type: 'symbol', role: 'found', shape: 'ring', ...at }, { type: 'symbol', ...at, ...INSIDE[use], radiusPx: at.radiusPx * INSIDE[use].share }];
}
