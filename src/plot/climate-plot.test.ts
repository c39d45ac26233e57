import { describe, expect, it } from 'vitest';
import { climatePlot } from './climate-plot.ts';

const options = (hours: readonly number[], values: readonly (number | null)[]) => ({ hours, panels: [{ label: 'Humidity', unit: 'pct' as const, values, band: { low: 35, high: 65 } }], title: 't', description: 'd', locale: 'en', widthPx: 400, panelPx: 120 });
const start = Date.UTC(2026, 0, 1) / 3_600_000;

describe('the plot of the air', () => {
  it('keeps the one peak among a hundred thousand hours, and stays small', () => {
    const hours = Array.from({ length: 100_000 }, (_, index) => start + index);
    const values = hours.map((_, index) => (index === 61_234 ? 99 : 50));
    const { marks } = climatePlot(options(hours, values));
    const path = marks.find((mark) => mark.type === 'path');
    const ys = path?.type === 'path' ? [...path.d.matchAll(/,([\d.]+)/gu)].map(([, y]) => Number(y)) : [];
    const top = Math.min(...ys);
    expect(ys.filter((y) => y === top)).toHaveLength(1);
    expect(ys.length).toBeLessThan(4 * 400);
  });

  it('draws no line across a hole, and nothing where nothing was read', () => {
    const gap = climatePlot(options([start, start + 1, start + 100, start + 101], [50, 51, 52, 53]));
    expect(gap.marks.filter(({ type }) => type === 'path')).toHaveLength(2);
    expect(climatePlot(options([start, start + 1], [null, null])).marks.filter(({ type }) => type === 'path')).toHaveLength(0);
  });

  it('names days on a short log and months on a long one', () => {
    const texts = (days: number): readonly string[] => climatePlot(options([start, start + days * 24], [50, 50])).marks.flatMap((mark) => (mark.type === 'text' ? [mark.text] : []));
    expect(texts(10)).toContain('Jan 5');
    expect(texts(365)).toContain('Jul 26');
  });
});
