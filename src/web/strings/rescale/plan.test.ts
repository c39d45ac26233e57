import { type ScaleWire, analyseScale } from '#strings';
import { hertz, millimetres } from '#units';
import { describe, expect, it } from 'vitest';
import { totalsOf } from './plan.ts';

const plain = (diameterMm: number): ScaleWire => ({ kind: 'plain', diameterMm: millimetres(diameterMm) });
const wound = (wrapMm: number): ScaleWire => ({ kind: 'wound', coreDiameterMm: millimetres(1), wraps: [{ wireDiameterMm: millimetres(wrapMm) }] });

/** A short scale from key 40 on, its strings as given; `undefined` has none. */
const scaleOf = (wires: readonly (ScaleWire | undefined)[], sections: { name: string; firstKey: number; lastKey: number }[] = []) => analyseScale({
  sections, asked: {},
  notes: wires.map((wire, place) => ({
    key: 40 + place, frequencyHz: hertz(261.63 * 2 ** (place / 12)), speakingLengthMm: millimetres(620 * 2 ** (-place / 13)), isLengthEstimated: false, strings: 3,
    ...(wire === undefined ? {} : { wire }),
  })),
});

describe('the totals plans are compared by', () => {
  it('count sizes, windings, changes of size among plain neighbours, and notes strung otherwise', () => {
    const found = scaleOf([wound(0.3), wound(0.3), plain(1), plain(1), plain(0.95), undefined]);
    const planned = scaleOf([wound(0.3), wound(0.35), plain(1), plain(0.95), plain(0.95), plain(0.9)]);
    expect(totalsOf(found, undefined)).toMatchObject({ plainSizes: 2, windings: 1, sizeChanges: 1, changed: 0, counted: 5, of: 6 });
    expect(totalsOf(planned, found)).toMatchObject({ plainSizes: 3, windings: 2, sizeChanges: 2, changed: 2, counted: 6, of: 6 });
  });

  it('add up the load over every string, and name the most and the least stressed note', () => {
    const scale = scaleOf([plain(1.1), plain(1), plain(0.9), plain(0.9)]);
    const { tensionN, most, least } = totalsOf(scale, undefined);
    expect(tensionN).toBeCloseTo(scale.notes.reduce((sum, { figures }) => sum + 3 * (figures?.tensionN ?? Number.NaN), 0), 6);
    const shares = scale.notes.map(({ key, figures }) => ({ key, pct: figures?.breakingPct ?? Number.NaN }));
    expect(most?.pct).toBe(Math.max(...shares.map(({ pct }) => pct)));
    expect(shares).toContainEqual(least);
    expect(least?.pct).toBe(Math.min(...shares.map(({ pct }) => pct)));
  });

  it('are smoother for an even scale, and say nothing of roughness where too few notes stand side by side', () => {
    const even = totalsOf(scaleOf([plain(1), plain(1), plain(1), plain(1), plain(1)]), undefined);
    const rough = totalsOf(scaleOf([plain(1), plain(1.1), plain(0.9), plain(1.1), plain(1)]), undefined);
    expect(even.tensionRoughness ?? Number.NaN).toBeLessThan(rough.tensionRoughness ?? Number.NaN);
    expect(even.inharmonicityRoughness ?? Number.NaN).toBeLessThan(rough.inharmonicityRoughness ?? Number.NaN);
    expect(totalsOf(scaleOf([plain(1), plain(1)]), undefined).tensionRoughness).toBeUndefined();
  });
});
