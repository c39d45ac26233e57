import { describe, expect, it } from 'vitest';
import { keyStripScene, leadMap, strokeCurve } from './index.ts';

const strip = keyStripScene({
  fromMm: -10, toMm: 240, frontMm: 238, heightMm: 14, pxPerMm: 4, lineCount: 2, title: 'C4', description: 'one of each', signs: [{ atMm: 0, text: 'datum' }, { atMm: 300, text: 'out of view' }], keepOutsMm: [[-40, 40], [193, 1238]],
  holes: [{ positionMm: 178, diameterMm: 12.7, use: 'refill', lines: ['a'] }, { positionMm: 100, diameterMm: 11, use: 'plug', lines: [] }, { positionMm: 60, diameterMm: 9.5, use: 'new', lines: ['b', 'c'] }],
});

describe('a key from its side', () => {
  it('draws every hole as large as it is and as far from the datum as it lies', () => {
    const rounds = strip.marks.flatMap((mark) => (mark.type === 'symbol' && mark.shape === 'ring' ? [mark] : []));
    expect(rounds.map(({ x, radiusPx }) => [(x - 40) / 4, (2 * radiusPx) / 4])).toEqual([[178, 12.7], [100, 11], [60, 9.5]]);
    expect(strip.widthPx).toBe(1000);
  });

  it('shades where no hole may come as far as the wood reaches, and leaves out words beyond the drawing', () => {
    const shades = strip.marks.flatMap((mark) => (mark.type === 'rect' ? [[mark.x / 4 - 10, (mark.x + mark.width) / 4 - 10]] : []));
    expect(shades).toEqual([[-10, 40], [193, 238]]);
    expect(strip.marks.flatMap((mark) => (mark.type === 'text' ? [mark.text] : []))).toEqual(['datum', 'a', 'b', 'c']);
  });
});

describe('the leads over the keys', () => {
  it('has one scale across and along: two places 100 mm apart are as far as keys 100 mm apart', () => {
    const map = leadMap({
      compass: { firstMidi: 21, lastMidi: 108 }, widthPx: 1000, locale: 'en', title: 't', description: 'd', yLabel: 'y',
      keys: [{ key: 1, holes: [{ positionMm: 150, diameterMm: 12.7, use: 'refill' }, { positionMm: 50, diameterMm: 12.7, use: 'refill' }] }],
    });
    const [one, other] = map.marks.flatMap((mark) => (mark.type === 'symbol' && mark.shape === 'ring' ? [mark] : []));
    const pxPerMm = ((other?.y ?? 0) - (one?.y ?? 0)) / 100;
    expect((one?.radiusPx ?? 0) / pxPerMm).toBeCloseTo(6.35, 6);
    // Seven octaves of 7 naturals from A0 to A7: 49 naturals wide.
    const [first, last] = [map.columns[0], map.columns[84]];
    expect(((last?.centrePx ?? 0) - (first?.centrePx ?? 0)) / pxPerMm / 49).toBeCloseTo(23.5, 0);
  });
});

describe('a figure over the travel of a key', () => {
  it('breaks where the key does not drive the hammer, and marks the places named', () => {
    const scene = strokeCurve({
      points: [{ x: 0, y: undefined }, { x: 1, y: 5 }, { x: 2, y: 6 }, { x: 3, y: undefined }], places: [{ x: 2, label: 'let-off' }], levels: [], at: { x: 1, y: 5 }, xLabel: 'x', yLabel: 'y', title: 't', description: 'd', locale: 'en', widthPx: 300, heightPx: 150,
    });
    const path = scene.marks.find((mark) => mark.type === 'path');
    expect(path?.type === 'path' && path.d.match(/[ML]/gu)?.length).toBe(2);
    expect(scene.marks.some((mark) => mark.type === 'text' && mark.text === 'let-off')).toBe(true);
  });
});
