import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointNear, tradeOffPlot } from './index.ts';

const options = { xLabel: 'tension', yLabel: 'inharmonicity', title: 't', description: 'd', locale: 'en', widthPx: 520, heightPx: 280 } as const;
const point = (x: number, y: number, label = '') => ({ x, y, label });
const value = fc.double({ min: 1e-4, max: 10, noNaN: true });
const plotted = fc.array(fc.tuple(value, value), { minLength: 1, maxLength: 12 });

describe('the plot of a trade-off', () => {
  it('sets less of either aim further left and further down, all within the frame', () => {
    fc.assert(fc.property(plotted, (pairs) => {
      const { points } = tradeOffPlot({ ...options, points: pairs.map(([x, y], place) => point(x, y, String(place + 1))) });
      for (const [at, { xPx, yPx }] of points.entries()) {
        expect(xPx).toBeGreaterThanOrEqual(46);
        expect(xPx).toBeLessThanOrEqual(506);
        expect(yPx).toBeGreaterThanOrEqual(30);
        expect(yPx).toBeLessThanOrEqual(242);
        for (const [other, two] of points.entries()) {
          const [[x1 = 0, y1 = 0], [x2 = 0, y2 = 0]] = [pairs[at] ?? [], pairs[other] ?? []];
          if (x1 < x2) expect(xPx).toBeLessThanOrEqual(two.xPx);
          if (y1 < y2) expect(yPx).toBeGreaterThanOrEqual(two.yPx);
        }
      }
    }));
  });

  it('finds every point again where it was drawn', () => {
    const scene = tradeOffPlot({ ...options, points: [point(1, 4), point(2, 2), point(4, 1)] });
    expect(scene.points.map(({ xPx, yPx }) => pointNear(scene, xPx + 2, yPx - 2))).toEqual([0, 1, 2]);
    expect(pointNear({ points: [] }, 1, 1)).toBeUndefined();
  });

  it('draws how things stand only where that is told, and a curve only through two points and more', () => {
    const rings = (scene: ReturnType<typeof tradeOffPlot>) => scene.marks.filter((mark) => mark.type === 'symbol' && mark.role === 'found');
    const paths = (scene: ReturnType<typeof tradeOffPlot>) => scene.marks.filter(({ type }) => type === 'path');
    const one = tradeOffPlot({ ...options, points: [point(1, 4)] });
    const two = tradeOffPlot({ ...options, points: [point(1, 4), point(2, 2)], standing: point(3, 5, 'as it stands') });
    expect([rings(one), paths(one)]).toEqual([[], []]);
    expect([rings(two).length, paths(two).length]).toEqual([1, 1]);
    expect(two.marks.some((mark) => mark.type === 'text' && mark.text === 'as it stands')).toBe(true);
  });

  it('names the chosen point where numbers would lie over one another', () => {
    const crowded = [point(1, 1, '1'), point(1.0001, 1.0001, '2'), point(9, 9, '3')];
    const names = (chosen: number) => tradeOffPlot({ ...options, points: crowded, chosen }).marks.flatMap((mark) => (mark.type === 'text' && mark.role === 'label' && mark.sizePx === 10 ? [mark.text] : []));
    expect(names(1)).toEqual(['2', '3']);
    expect(names(0)).toEqual(['1', '3']);
  });
});
