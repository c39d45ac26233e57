import { formatMeasure, unitSign } from '#units';
import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import type { Mark, Scene } from './scene.ts';
import { shorten } from './symbol.ts';

/** A curve over time on axes of its own. */
export interface ClimatePanel {
  readonly label: string;
  readonly unit: 'pct' | 'degC';
  readonly values: readonly (number | null)[];
  /** A band to stay within. */
  readonly band?: { readonly low: number; readonly high: number } | undefined;
}

export interface ClimatePlotOptions {
  /** Hours since 1 January 1970 by the clock on the wall; each panel has a value for each. */
  readonly hours: readonly number[];
  readonly panels: readonly ClimatePanel[];
  readonly title: string;
  readonly description: string;
  readonly locale: string;
  readonly widthPx: number;
  readonly panelPx: number;
}

const MARGINS = { leftPx: 40, rightPx: 10, topPx: 22, bottomPx: 20 } as const;
const TEXT_PX = 10;
const HOUR_MS = 3_600_000;
/** A curve is not drawn across a hole longer than this. */
const LONGEST_GAP_HOURS = 48;

type Linear = ReturnType<typeof scaleLinear<number, number>>;

/** The air over time, one panel below the other on one axis of days: humidity with its band, moisture of wood, temperature. */
export function climatePlot(options: ClimatePlotOptions): Scene {
  const { hours, panels, widthPx, panelPx, title, description } = options;
  const [first = 0, last = 1] = [hours[0], hours.at(-1)];
  const x = scaleLinear().domain([first, Math.max(last, first + 1)]).range([MARGINS.leftPx, widthPx - MARGINS.rightPx]);
  const heightPx = panels.length * panelPx + MARGINS.bottomPx;
  const marks = [...drawDays(options, x, heightPx), ...panels.flatMap((panel, index) => drawPanel(panel, index, options, x))];
  return { widthPx, heightPx, title, description, marks, columns: [] };
}

function drawPanel(panel: ClimatePanel, index: number, { hours, panelPx, widthPx, locale }: ClimatePlotOptions, x: Linear): readonly Mark[] {
  const { label, unit, values, band } = panel;
  const [topPx, bottomPx] = [index * panelPx + MARGINS.topPx, (index + 1) * panelPx - 6];
  const stated = values.filter((value) => value !== null);
  const ends = [...(band === undefined ? [] : [band.low, band.high]), ...endsOf(stated)];
  const y = scaleLinear().domain([Math.min(...ends), Math.max(...ends)]).nice(4).range([bottomPx, topPx]);
  const [left, right] = [MARGINS.leftPx, widthPx - MARGINS.rightPx];
  const named: Mark = { type: 'text', role: 'label', x: 4, y: topPx - 9, text: `${label} (${unitSign[unit]})`, anchor: 'start', sizePx: 12 };
  const limits = band === undefined ? [] : [
    { type: 'rect', role: 'band', x: left, y: y(band.high), width: right - left, height: y(band.low) - y(band.high) } as const,
    ...[band.low, band.high].map((at): Mark => ({ type: 'line', role: 'limit', x1: left, x2: right, y1: shorten(y(at)), y2: shorten(y(at)) })),
  ];
  return [named, ...limits, ...drawTicks(y, left, right, locale), ...curvesOf(hours, values, x).flatMap((points): readonly Mark[] => drawCurve(points, x, y))];
}

function endsOf(values: readonly number[]): readonly number[] {
  if (values.length === 0) return [0, 1];
  let [least, most] = [Infinity, -Infinity];
  for (const value of values) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return least === most ? [least - 1, most + 1] : [least, most];
}

function drawTicks(y: Linear, left: number, right: number, locale: string): readonly Mark[] {
  return y.ticks(4).flatMap((value): readonly Mark[] => [
    { type: 'line', role: 'grid', x1: left, x2: right, y1: shorten(y(value)), y2: shorten(y(value)) },
    { type: 'text', role: 'note', x: left - 5, y: shorten(y(value)) + 3.4, text: formatMeasure(value, { locale, decimals: Number.isInteger(value) ? 0 : 1 }), anchor: 'end', sizePx: TEXT_PX },
  ]);
}

interface Point {
  readonly hour: number;
  readonly value: number;
}

/** The stretches of a curve between holes, each thinned to the lowest and highest value of a pixel, so that no peak is lost. */
function curvesOf(hours: readonly number[], values: readonly (number | null)[], x: Linear): readonly (readonly Point[])[] {
  const curves: Point[][] = [];
  let before = -Infinity;
  let column: Point[] = [];
  const flush = (): void => {
    const kept = endsOfColumn(column);
    curves.at(-1)?.push(...kept);
    column = [];
  };
  hours.forEach((hour, index) => {
    const value = values[index];
    if (value == null) return;
    if (hour - before > LONGEST_GAP_HOURS) { flush(); curves.push([]); }
    else if (Math.floor(x(hour)) !== Math.floor(x(before))) flush();
    column.push({ hour, value });
    before = hour;
  });
  flush();
  return curves;
}

/** First, lowest, highest and last of a column, in the order of time. */
function endsOfColumn(column: readonly Point[]): readonly Point[] {
  if (column.length <= 3) return column;
  const lowest = column.reduce((a, b) => (b.value < a.value ? b : a));
  const highest = column.reduce((a, b) => (b.value > a.value ? b : a));
  return [...new Set([column[0], ...(lowest.hour < highest.hour ? [lowest, highest] : [highest, lowest]), column.at(-1)])].filter((point) => point !== undefined);
}

function drawCurve(points: readonly Point[], x: Linear, y: Linear): readonly Mark[] {
  const [only] = points;
  if (points.length === 1 && only !== undefined) return [{ type: 'symbol', role: 'label', shape: 'dot', x: shorten(x(only.hour)), y: shorten(y(only.value)), radiusPx: 1.6 }];
  const path = line<Point>().x(({ hour }) => shorten(x(hour))).y(({ value }) => shorten(y(value)))([...points]);
  return path === null ? [] : [{ type: 'path', role: 'axis', d: path, filled: false }];
}

/** Upright lines at days, months or years, as many as there is room for, with their names below. */
function drawDays({ hours, widthPx, locale }: ClimatePlotOptions, x: Linear, heightPx: number): readonly Mark[] {
  const [first = 0, last = 0] = [hours[0], hours.at(-1)];
  const most = Math.max(2, Math.floor((widthPx - MARGINS.leftPx) / 64));
  const { days, words } = calendarTicks(first, last, most);
  const name = new Intl.DateTimeFormat(locale, { ...words, timeZone: 'UTC' });
  return days.flatMap((hour): readonly Mark[] => [
    { type: 'line', role: 'octave', x1: shorten(x(hour)), x2: shorten(x(hour)), y1: MARGINS.topPx, y2: heightPx - MARGINS.bottomPx },
    { type: 'text', role: 'note', x: shorten(x(hour)), y: heightPx - 6, text: name.format(hour * HOUR_MS), anchor: x(hour) > widthPx - 40 ? 'end' : 'middle', sizePx: TEXT_PX },
  ]);
}

const STEPS = [{ months: 1 }, { months: 2 }, { months: 3 }, { months: 6 }, { months: 12 }, { months: 24 }, { months: 60 }] as const;
const DAY_STEPS = [1, 2, 7, 14] as const;

function calendarTicks(first: number, last: number, most: number): { readonly days: readonly number[]; readonly words: Intl.DateTimeFormatOptions } {
  const spanDays = (last - first) / 24;
  const step = DAY_STEPS.find((days) => spanDays / days <= most && spanDays < 62);
  if (step !== undefined) {
    const begin = Math.ceil(first / 24);
    return { days: Array.from({ length: Math.max(0, Math.floor((last / 24 - begin) / step) + 1) }, (_, index) => (begin + index * step) * 24), words: { day: 'numeric', month: 'short' } };
  }
  const months = (STEPS.find((one) => spanDays / 30.4 / one.months <= most) ?? { months: 120 }).months;
  const begin = new Date(first * HOUR_MS);
  const monthCount = begin.getUTCFullYear() * 12 + begin.getUTCMonth() + 1;
  const firstMonth = Math.ceil(monthCount / months) * months;
  const at = (month: number): number => Date.UTC(Math.floor(month / 12), month % 12) / HOUR_MS;
  const days: number[] = [];
  for (let month = firstMonth; at(month) <= last; month += months) days.push(at(month));
  return { days, words: months >= 12 ? { year: 'numeric' } : { month: 'short', year: '2-digit' } };
}
