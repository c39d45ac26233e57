import { analyseBelly } from '#belly';
import { type KeyNumber, type QuantityName, type Reading, type State, scaleTermsSchema } from '#instrument';
import { type AnalysedNote, analyseScale } from '#strings';
import { hertz, millimetres } from '#units';
import { describe, expect, it } from 'vitest';
import { type BearingMaterial, bearingInputOf } from './bearing-input.ts';

const instrument = { firstMidi: 21, lastMidi: 108, sections: [{ name: 'Tenor', firstKey: 30, lastKey: 45 }, { name: 'Treble', firstKey: 46, lastKey: 88 }] } as const;
const reading = (key: KeyNumber, quantity: QuantityName, value: number, state: State = 'found'): Reading => ({
  id: `${state} ${String(key)} ${quantity}`, cycle: 1, state, quantity, scope: 'key', index: key, repeat: 1, typed: String(value), value, outcome: null, uncertainty: null, basis: 'measured', remark: '', sessionId: null, at: '', by: '',
});
const heights = (key: KeyNumber, bridge: number): readonly Reading[] => [
  reading(key, 'frontHeightMm', 0), reading(key, 'bridgeHeightMm', bridge), reading(key, 'rearHeightMm', 0.1), reading(key, 'backLengthMm', 95),
];
/** C4 and its neighbours: 622 mm of 1.016 mm wire, three strings, about 680 N. */
const strings: readonly AnalysedNote[] = analyseScale({
  notes: Array.from({ length: 88 }, (_, index) => ({ key: index + 1, frequencyHz: hertz(261.6), speakingLengthMm: millimetres(622), isLengthEstimated: false, strings: 3, wire: { kind: 'plain' as const, diameterMm: millimetres(1.016) } })),
  sections: [], asked: {},
}).notes;
const terms = scaleTermsSchema.parse({ heightUncertaintyMm: 0.1, lengthUncertaintyMm: 0.5, gaugeFrontSpanMm: 25, gaugeRearSpanMm: 25, bearingTargetDeg: 1, bearingToleranceDeg: 0.2 });
const gather = (readings: readonly Reading[], rest: Partial<BearingMaterial> = {}) => bearingInputOf({ instrument, readings, cycle: 1, state: 'found', terms, strings, ...rest });
const noteAt = (key: number, ...given: Parameters<typeof gather>) => analyseBelly(gather(...given).input).notes[key - 1];
const assumedIn = (...given: Parameters<typeof gather>) => Object.fromEntries(gather(...given).assumed.map(({ what, notes }) => [what, notes]));

describe('bearing gathered from readings', () => {
  it('takes heights as the exact triangle, with the tension of the strings', () => {
    const note = noteAt(40, heights(40, 1.5));
    const [front, rear] = [Math.atan(1.5 / 622), Math.atan(1.4 / 95)];
    expect(note?.figures?.totalDeg).toBeCloseTo(((front + rear) * 180) / Math.PI, 12);
    expect(note?.figures?.forceN).toBeCloseTo(3 * (strings[39]?.figures?.tensionN ?? Number.NaN) * (Math.sin(front) + Math.sin(rear)), 9);
    expect(note?.figures?.totalUncertaintyDeg).toBeGreaterThan(0.06);
  });

  it('lays heights only between stations of one section, says so, and claims no uncertainty there', () => {
    const stations = [...heights(40, 1), ...heights(44, 2), ...heights(48, 3)];
    const laid = noteAt(42, stations)?.read;
    expect(laid).toMatchObject({ source: 'heights', isEstimated: true, bridgeHeightMm: 1.5 });
    expect(laid).not.toHaveProperty('doubt');
    for (const outside of [39, 45, 46, 47, 49]) expect(noteAt(outside, stations)).not.toHaveProperty('read');
    expect(assumedIn(stations)).toMatchObject({ heightEstimated: [41, 42, 43] });
    expect(assumedIn(stations, { instrument: { ...instrument, sections: [] } })).not.toHaveProperty('heightEstimated');
  });

  it('tells angles without a force where no tension is known', () => {
    const bare = [{ ...strings[39] }].map(({ figures: _, ...note }) => note as AnalysedNote);
    const note = noteAt(40, heights(40, 1.5), { strings: bare });
    expect(note?.figures?.totalDeg).toBeGreaterThan(0.9);
    expect(note?.figures).not.toHaveProperty('forceN');
    expect(assumedIn(heights(40, 1.5), { strings: bare })).toMatchObject({ noTension: [40] });
  });

  it('takes angles and gauge as read; a gauge without its spans tells nothing', () => {
    expect(noteAt(40, [reading(40, 'frontBearingDeg', 0.4), reading(40, 'rearBearingDeg', 0.6)])?.figures?.totalDeg).toBeCloseTo(1, 12);
    expect(noteAt(40, [reading(40, 'frontBearingDeg', 0.4)])?.figures).toEqual({ frontDeg: 0.4 });
    const gauge = [reading(40, 'bearingGaugeMm', 0.22)];
    expect(noteAt(40, gauge)?.figures?.totalDeg).toBeCloseTo(((2 * Math.atan(0.22 / 25)) * 180) / Math.PI, 12);
    const spanless = scaleTermsSchema.parse({});
    expect(noteAt(40, gauge, { terms: spanless })).not.toHaveProperty('read');
    expect(assumedIn(gauge, { terms: spanless })).toMatchObject({ noSpans: [40] });
  });

  it('goes by measured heights before angles, by angles before the gauge, and keeps the others beside', () => {
    const all = [...heights(40, 1.5), reading(40, 'frontBearingDeg', 0.4), reading(40, 'rearBearingDeg', 0.6), reading(40, 'bearingGaugeMm', 0.2)];
    expect(noteAt(40, all)).toMatchObject({ read: { source: 'heights' }, also: [{ source: 'angles' }, { source: 'gauge' }] });
  });

  it('plans over what was found, and drops angles of before once a height moves', () => {
    const found = [...heights(40, 1.5), reading(40, 'bearingGaugeMm', 0.2)];
    expect(noteAt(40, [...found, reading(40, 'bridgeHeightMm', 2, 'planned')], { state: 'planned' })).toMatchObject({ read: { bridgeHeightMm: 2, rearHeightMm: 0.1 }, also: [] });
  });

  it('judges by what is asked and nothing else', () => {
    expect(noteAt(40, heights(40, 0.5))?.findings.map(({ code }) => code)).toEqual(['bearingLost']);
    expect(noteAt(40, heights(40, 0.5), { terms: scaleTermsSchema.parse({}) })?.findings).toEqual([]);
    expect(noteAt(40, heights(40, -0.3), { terms: null })?.findings.map(({ side }) => side)).toEqual(['front', 'rear', 'total']);
  });

  it('sums what is known and says of how many notes', () => {
    const { whole, sections } = analyseBelly(gather([...heights(40, 1.5), ...heights(50, 1.5)]).input);
    expect(whole).toMatchObject({ counted: 2, of: 88 });
    expect(sections.map(({ counted, of }) => [counted, of])).toEqual([[1, 16], [1, 43]]);
    expect((sections[0]?.load?.forceN ?? 0) + (sections[1]?.load?.forceN ?? 0)).toBeCloseTo(whole.load?.forceN ?? Number.NaN, 9);
  });
});
