import { formatMeasure } from '#units';
import type { ScaleLinear, ScaleLogarithmic } from 'd3-scale';
import type { KeyRow } from './key-row.ts';
import type { Mark } from './scene.ts';
import { type Standing, standingShape } from './symbol.ts';

/** Where a value stands on the page; linear or logarithmic. */
export type ValueScale = ScaleLinear<number, number> | ScaleLogarithmic<number, number>;

export interface FrameOptions {
  readonly row: KeyRow;
  readonly y: ValueScale;
  readonly axis?: 'linear' | 'log' | undefined;
  readonly topPx: number;
  readonly bottomPx: number;
  readonly widthPx: number;
  readonly yLabel: string;
  readonly unitSign: string;
  readonly locale: string;
  readonly series: readonly { readonly state: Standing; readonly label: string }[];
  readonly legend?: boolean | undefined;
}

const TEXT_PX = 10;
/** Mean advance of a letter in a humanist sans-serif, in ems: enough to set a legend from the right without measuring text. */
const LETTER_EM = 0.53;

/** About one tick for every 26 px: close enough to read a value, far enough apart to stay calm. */
export function tickCountOf(topPx: number, bottomPx: number): number {
  return Math.max(3, Math.round((bottomPx - topPx) / 26));
}

/** Value axis, grid, octave lines, name of the quantity and legend of the states. */
export function drawFrame(options: FrameOptions): readonly Mark[] {
  return [...drawOctaves(options), ...drawTicks(options), ...drawName(options), ...(options.legend === false ? [] : drawLegend(options))];
}

function drawOctaves({ row, topPx, bottomPx }: FrameOptions): readonly Mark[] {
  return row.board.keys.filter(({ note, key }) => /^C-?\d$/u.test(note) && key > 1).map(({ xMm }): Mark => {
    const x = row.leftPx + xMm * row.pxPerMm;
    return { type: 'line', role: 'octave', x1: x, x2: x, y1: topPx, y2: bottomPx };
  });
}

function drawTicks({ y, axis, row, widthPx, locale, topPx, bottomPx }: FrameOptions): readonly Mark[] {
  const ticks = axis === 'log' ? logTicksOf(y) : y.ticks(tickCountOf(topPx, bottomPx));
  const step = Math.abs((ticks[1] ?? 1) - (ticks[0] ?? 0));
  const decimalsOf = (value: number): number => Math.max(0, -Math.floor(Math.log10(axis === 'log' ? value : step) + 1e-9));
  const right = row.columns.at(-1);
  const endPx = right === undefined ? widthPx : right.xPx + right.widthPx;
  return ticks.flatMap((value): readonly Mark[] => [
    { type: 'line', role: value === 0 ? 'axis' : 'grid', x1: row.leftPx, x2: endPx, y1: y(value), y2: y(value) },
    { type: 'text', role: 'note', x: row.leftPx - 6, y: y(value) + 3.4, text: formatMeasure(value, { locale, decimals: decimalsOf(value) }), anchor: 'end', sizePx: TEXT_PX },
  ]);
}

/** Ones, twos and fives of each decade in view. */
function logTicksOf(y: ValueScale): readonly number[] {
  const [low = 1, high = 1] = y.domain();
  const decades = Array.from({ length: Math.floor(Math.log10(high)) - Math.floor(Math.log10(low)) + 1 }, (_, index) => Math.floor(Math.log10(low)) + index);
  return decades.flatMap((power) => [1, 2, 5].map((digit) => Number(`${String(digit)}e${String(power)}`))).filter((value) => value >= low && value <= high);
}

function drawName({ yLabel, unitSign }: FrameOptions): readonly Mark[] {
  return [{ type: 'text', role: 'label', x: 4, y: 14, text: unitSign === '' ? yLabel : `${yLabel} (${unitSign})`, anchor: 'start', sizePx: 12 }];
}

function drawLegend({ series, widthPx }: FrameOptions): readonly Mark[] {
  const marks: Mark[] = [];
  let right = widthPx - 6;
  for (const { state, label } of [...series].reverse()) {
    const textPx = label.length * TEXT_PX * LETTER_EM;
    marks.push({ type: 'text', role: 'label', x: right - textPx, y: 14, text: label, anchor: 'start', sizePx: TEXT_PX });
    marks.push({ type: 'symbol', role: state, shape: standingShape[state], x: right - textPx - 8, y: 10.5, radiusPx: 3.2 });
    right -= textPx + 26;
  }
  return marks;
}
