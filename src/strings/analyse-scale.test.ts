import { equalTemperedHzOf, compass88 } from '#instrument';
import { megapascals, millimetres, percent } from '#units';
import { describe, expect, it } from 'vitest';
import { type ScaleInput, type ScaleNote, analyseScale, plainFiguresOf, woundFiguresOf } from './index.ts';

const noteAt = (key: number, more: Partial<ScaleNote> = {}): ScaleNote => ({ key, frequencyHz: equalTemperedHzOf(compass88, key), isLengthEstimated: false, ...more });
const plain = (key: number, lengthMm: number, diameterMm: number, more: Partial<ScaleNote> = {}): ScaleNote =>
  noteAt(key, { speakingLengthMm: millimetres(lengthMm), wire: { kind: 'plain', diameterMm: millimetres(diameterMm) }, strings: 3, ...more });
const wound = (key: number, lengthMm: number): ScaleNote => noteAt(key, {
  speakingLengthMm: millimetres(lengthMm), strings: 2, wire: { kind: 'wound', coreDiameterMm: millimetres(1), wraps: [{ wireDiameterMm: millimetres(0.5) }], bareFrontMm: millimetres(16), bareRearMm: millimetres(14) },
});
const scaleOf = (notes: readonly ScaleNote[], more: Partial<ScaleInput> = {}): ScaleInput => ({ notes, sections: [], asked: {}, ...more });

describe('the analysis of a scale', () => {
  it('says of each note what the operations say of its string', () => {
    const { notes: [c4, low] } = analyseScale(scaleOf([plain(40, 622, 1.016), wound(20, 1000)]));
    const figures = plainFiguresOf({ frequencyHz: equalTemperedHzOf(compass88, 40), speakingLengthMm: millimetres(622), diameterMm: millimetres(1.016) });
    expect(c4?.figures).toMatchObject({ tensionN: figures.tensionN, breakingPct: figures.breakingPct, inharmonicityB: figures.inharmonicityB, impedanceKgPerS: figures.impedanceKgPerS });
    const string = woundFiguresOf({ frequencyHz: equalTemperedHzOf(compass88, 20), speakingLengthMm: millimetres(1000), coreDiameterMm: millimetres(1), wraps: [{ wireDiameterMm: millimetres(0.5) }], bareFrontMm: millimetres(16), bareRearMm: millimetres(14) });
    expect(string.ok && low?.figures).toMatchObject(string.ok ? { tensionN: string.value.tensionN, inharmonicityB: string.value.inharmonicityB } : {});
  });

  it('invents nothing: without length or wire no figure, without count no share in the load', () => {
    const { notes, plate } = analyseScale(scaleOf([noteAt(1), plain(40, 622, 1.016, { strings: undefined as never }), plain(41, 590, 1.016)]));
    expect(notes[0]).toMatchObject({ issues: [] });
    expect(notes[0]?.figures).toBeUndefined();
    expect(plate).toMatchObject({ counted: 1, of: 3 });
    expect(plate.tensionN).toBeCloseTo(3 * (notes[2]?.figures?.tensionN ?? 0), 9);
  });

  it('refuses an overall diameter below the core, by field, and counts it nowhere', () => {
    const { notes: [note], plate } = analyseScale(scaleOf([noteAt(10, { speakingLengthMm: millimetres(1200), strings: 1, wire: { kind: 'wound', coreDiameterMm: millimetres(1.2), overallDiameterMm: millimetres(1.1) } })]));
    expect(note?.issues).toMatchObject([{ code: 'order', path: 'overallDiameterMm', given: 1.1 }]);
    expect(plate.counted).toBe(0);
  });

  it('judges only what is asked, and says where the uncertainty reaches over the bound', () => {
    const note = plain(40, 622, 1.016);
    expect(analyseScale(scaleOf([note])).notes[0]?.verdict).toBeUndefined();
    const pct = analyseScale(scaleOf([note])).notes[0]?.figures?.breakingPct ?? 0;
    expect(analyseScale(scaleOf([note], { asked: { mostPct: percent(pct - 2) } })).notes[0]?.verdict).toMatchObject({ side: 'over', isDoubtful: false });
    expect(analyseScale(scaleOf([note], { asked: { leastPct: percent(pct + 3), mostPct: percent(pct + 9) } })).notes[0]?.verdict).toMatchObject({ side: 'under' });
    const doubtful = { ...note, doubt: { lengthUncertaintyMm: millimetres(2), diameterUncertaintyMm: millimetres(0.005) } };
    expect(analyseScale(scaleOf([doubtful], { asked: { mostPct: percent(pct - 0.1) } })).notes[0]?.verdict).toMatchObject({ side: 'over', isDoubtful: true });
  });

  it('carries length and diameter to tension as u(T)/T = 2·√(u(d)²/d² + u(L)²/L²)', () => {
    const note = analyseScale(scaleOf([plain(40, 622, 1.016, { doubt: { lengthUncertaintyMm: millimetres(1), diameterUncertaintyMm: millimetres(0.005) } })])).notes[0];
    const { tensionN = 0, uncertainty } = note?.figures ?? {};
    expect((uncertainty?.tensionUncertaintyN ?? 0) / tensionN).toBeCloseTo(2 * Math.hypot(0.005 / 1.016, 1 / 622), 6);
    // Z = 2·μ·L·f goes with d² and L: u(Z)/Z = √(4·u(d)²/d² + u(L)²/L²).
    expect((uncertainty?.impedanceUncertaintyKgPerS ?? 0) / (note?.figures?.impedanceKgPerS ?? 1)).toBeCloseTo(Math.hypot(2 * 0.005 / 1.016, 1 / 622), 6);
  });

  it('sums sections and plate, and tells the steps at the breaks apart from the rest', () => {
    const input = scaleOf([wound(26, 940), plain(27, 1110, 1.143), plain(28, 1055, 1.143), plain(29, 1005, 1.168)], { sections: [{ name: 'Bass', firstKey: 26, lastKey: 26 }, { name: 'Tenor', firstKey: 27, lastKey: 29 }] });
    const { sections, plate, breaks, largestStep, notes } = analyseScale(input);
    expect(sections.map(({ load }) => load.counted)).toEqual([1, 3]);
    expect(sections.reduce((sum, { load }) => sum + load.tensionN, 0)).toBeCloseTo(plate.tensionN, 9);
    expect(breaks).toMatchObject([{ lowerKey: 26, upperKey: 27, isSection: true, isWinding: true }]);
    expect(breaks[0]?.tensionRatio).toBeCloseTo((notes[1]?.figures?.tensionN ?? 0) / (notes[0]?.figures?.tensionN ?? 1), 12);
    expect(largestStep?.lowerKey).not.toBe(26);
  });

  it('works out anew only the note whose size changed', () => {
    const notes = [plain(40, 622, 1.016), plain(41, 590, 1.016), wound(20, 1000)];
    const before = analyseScale(scaleOf(notes));
    const after = analyseScale(scaleOf([notes[0] ?? noteAt(40), plain(41, 590, 1.041), wound(20, 1000)]), before);
    expect(after.notes[0]).toBe(before.notes[0]);
    expect(after.notes[2]).toBe(before.notes[2]);
    expect(after.notes[1]).not.toBe(before.notes[1]);
    expect(after).toEqual(analyseScale(scaleOf([notes[0] ?? noteAt(40), plain(41, 590, 1.041), wound(20, 1000)])));
    expect(analyseScale(scaleOf(notes, { strengthModel: 'power-law' }), before).notes[0]).not.toBe(before.notes[0]);
  });

  it('lets a certificate go before every table', () => {
    const { notes: [note] } = analyseScale(scaleOf([plain(40, 622, 1.016, { certificateMPa: megapascals(2500) })], { strengthModel: 'power-law' }));
    expect(note?.figures?.breakingPct).toBeCloseTo((100 * (note?.figures?.stressMPa ?? 0)) / 2500, 9);
  });
});
