import { compass88, equalTemperedHzOf, keysOf } from '#instrument';
import { analyseScale } from '#strings';
import { millimetres, percent } from '#units';
import { describe, expect, it } from 'vitest';
import { type ScalePlotOptions, type SymbolMark, scalePlot, scaleSignsOf } from './index.ts';

const asked = { leastPct: percent(30), mostPct: percent(60) };
const scale = analyseScale({
  sections: [], asked,
  notes: keysOf(compass88).map((key) => ({
    key, frequencyHz: equalTemperedHzOf(compass88, key), isLengthEstimated: false,
    ...(key < 30 ? {} : { speakingLengthMm: millimetres(52 * 1.86 ** ((88 - key) / 12)), wire: { kind: 'plain', diameterMm: millimetres(0.95) } as const }),
  })),
});
const options = (figure: ScalePlotOptions['figure']): ScalePlotOptions => ({
  figure, scales: [{ state: 'found', label: 'As found', scale }], asked, compass: compass88, title: 't', description: 'd', yLabel: 'y', locale: 'en', widthPx: 900, heightPx: 210,
});
const points = (figure: ScalePlotOptions['figure']): readonly SymbolMark[] => scalePlot(options(figure)).marks.filter((mark): mark is SymbolMark => mark.type === 'symbol' && mark.role === 'found' && mark.key !== undefined);

describe('plots of a scale', () => {
  it('sets equal ratios of inharmonicity equally far apart', () => {
    const drawn = points('inharmonicity');
    const at = (key: number) => drawn.find((mark) => mark.key === key)?.y ?? 0;
    const ratioOf = (low: number, high: number) => Math.log((scale.notes[high - 1]?.figures?.inharmonicityB ?? 0) / (scale.notes[low - 1]?.figures?.inharmonicityB ?? 1));
    expect((at(40) - at(50)) / ratioOf(40, 50)).toBeCloseTo((at(60) - at(80)) / ratioOf(60, 80), 6);
    const ticks = scalePlot(options('inharmonicity')).marks.flatMap((mark) => (mark.type === 'text' && mark.role === 'note' && mark.anchor === 'end' ? [mark.text] : []));
    expect(ticks).toEqual(expect.arrayContaining(['0.001', '0.002', '0.005', '0.01']));
  });

  it('draws the band asked with the share of breaking, and nowhere else', () => {
    expect(scalePlot(options('breaking')).marks.some(({ role }) => role === 'band')).toBe(true);
    for (const figure of ['tension', 'inharmonicity', 'impedance'] as const) expect(scalePlot(options(figure)).marks.some(({ role }) => role === 'band')).toBe(false);
  });

  it('draws no point where nothing is known, and marks the keys by what is asked', () => {
    expect(points('tension').map(({ key }) => key)).toEqual(keysOf(compass88).slice(29));
    const signs = scaleSignsOf(scale);
    expect(signs.get(1)).toBe('unmeasured');
    for (const { key, verdict } of scale.notes.slice(29)) expect(signs.get(key)).toBe(verdict?.side === 'within' ? 'inside' : verdict?.side);
  });
});
