import { type QuantityName, type Reading, type TuningPass, scaleTermsSchema, tuningPassSchema, tuningTermsSchema } from '#instrument';
import { runOperation } from '#operation';
import { tuningCurveOperation, tuningDriftOperation } from '#tuning';
import { describe, expect, it } from 'vitest';
import { DEMO_TERMS, demoStrings } from './demo-strings.ts';
import { standingOf } from './demo-work.ts';
import { type TuningMaterial, pitchesOf, tuningInputOf } from './tuning-input.ts';
import { driftDaysOf, raiseInputOf, settledPassesOf, standingOfPasses, suggestedVisitOf } from './tuning-passes.ts';

const SECTIONS = [{ name: 'Bass', firstKey: 1, lastKey: 26 }, { name: 'Tenor', firstKey: 27, lastKey: 50 }, { name: 'Treble', firstKey: 51, lastKey: 88 }];
const instrument = { firstMidi: 21, lastMidi: 108, a4Hz: 440, sections: SECTIONS };
const reading = (index: number, quantity: QuantityName, value: number, more: Partial<Reading> = {}): Reading => ({
  id: `${String(index)} ${quantity}`, cycle: 1, state: 'found', quantity, scope: 'key', index, repeat: 1, typed: String(value), value,
  outcome: null, uncertainty: null, basis: 'measured', remark: '', sessionId: null, at: '', by: 'x', ...more,
});
const gather = (readings: readonly Reading[], more: Partial<TuningMaterial> = {}) => tuningInputOf({ instrument, readings, cycle: 1, state: 'found', tuning: null, scale: null, ...more });

describe('what a tuning curve is laid over', () => {
  it('puts B measured before B from the string, and lays the rest between neighbours of a section', () => {
    const gathered = gather([
      reading(40, 'speakingLengthMm', 622), reading(40, 'wireDiameterMm', 1.016), reading(40, 'inharmonicityB', 0.00041, { uncertainty: 4e-6 }),
      reading(42, 'speakingLengthMm', 560), reading(42, 'wireDiameterMm', 1.016),
    ]);
    expect(gathered.input?.keys[0]).toEqual({ key: 40, inharmonicityB: 0.00041, inharmonicityUncertainty: 4e-6 });
    expect([...gathered.bases]).toEqual([[40, 'measured'], [41, 'between'], [42, 'computed']]);
    const [low, mid, high] = (gathered.input?.keys ?? []).map((entry) => ('inharmonicityB' in entry ? entry.inharmonicityB : 0));
    expect(mid).toBeCloseTo(Math.sqrt((low ?? 0) * (high ?? 0)), 12);
    expect(gathered.assumed.map(({ what }) => what)).toEqual(['computed', 'between', 'left', 'equalTemperament', 'usualOctaves', 'usualSmoothness']);
  });

  it('has nothing to lay where nothing is known, and takes what the terms state', () => {
    expect(gather([]).input).toBeUndefined();
    const terms = tuningTermsSchema.parse({ temperament: 'well1800', root: 'D', octaves: [{ fromKey: 1, toKey: 76, type: '4:2' }], smoothness: 10 });
    expect(gather([reading(49, 'inharmonicityB', 0.0008)], { tuning: terms }).input).toMatchObject({ temperament: 'well1800', root: 'D', smoothness: 10, octaves: [{ type: '4:2', weight: 1 }], anchorKey: 49 });
  });

  it('finds A4 and the usual octaves on a keyboard that begins elsewhere', () => {
    const { input } = gather([reading(37, 'inharmonicityB', 0.0008)], { instrument: { ...instrument, firstMidi: 33, lastMidi: 96 } });
    expect(input).toMatchObject({ anchorKey: 37, octaves: [{ fromKey: 1, toKey: 15, type: '6:3' }, { fromKey: 16, toKey: 39 }, { fromKey: 40 }] });
  });

  it('stretches the invented grand as grands are: flat below, sharp above, A4 where it is', () => {
    const { readings } = standingOf(demoStrings());
    const { input } = gather(readings, { state: 'planned', scale: scaleTermsSchema.parse(DEMO_TERMS) });
    const result = runOperation(tuningCurveOperation, input);
    const offsets = result.ok ? (result.value as { readonly offsetsCents: readonly number[] }).offsetsCents : [];
    expect(offsets).toHaveLength(88);
    expect(offsets[48]).toBe(0);
    // Common practice, no source: A0 some 5 to 40 cents flat, C8 some 15 to 60 sharp.
    expect(offsets[0]).toBeLessThan(-3);
    expect(offsets[0]).toBeGreaterThan(-45);
    expect(offsets[87]).toBeGreaterThan(10);
    expect(offsets[87]).toBeLessThan(70);
  });

  it('reads a pitch from its frequency before the cents noted', () => {
    const pitches = pitchesOf(instrument, [reading(49, 'pitchHz', 441, { uncertainty: 0.01 }), reading(49, 'pitchOffsetCt', -3), reading(50, 'pitchOffsetCt', -4)], 1, 'found');
    expect(pitches.get(49)?.offsetCt).toBeCloseTo(1200 * Math.log2(441 / 440), 10);
    expect(pitches.get(50)).toEqual({ offsetCt: -4, quantity: 'pitchOffsetCt' });
  });
});

const pass = (day: string, foundCt: number, leftCt: number | null, more: Partial<TuningPass> = {}): TuningPass => tuningPassSchema.parse({ cycle: 1, day, stretch: 'tenor', foundCt, leftCt, id: `${day}${more.time ?? ''}`, at: `${day}T00:00:00Z`, ...more });

describe('passes over the strings', () => {
  it('settle at what the next pass over the same stretch finds within a fortnight', () => {
    const passes = [pass('2026-03-02', -50, 10, { time: '09:00' }), pass('2026-03-02', -3, 2, { time: '15:30' }), pass('2026-03-02', -40, 10, { stretch: 'bass' }), pass('2026-04-02', -9, 0)];
    expect(settledPassesOf(passes)).toMatchObject([{ settledCt: -3, afterHours: 6.5, pass: { foundCt: -50, leftCt: 10 } }]);
    expect(raiseInputOf(passes.map((one) => ({ ...one, pianoId: 'p' })), []).passes).toEqual([{ section: 'tenor', fromCents: -50, setCents: 10, settledCents: -3 }]);
  });

  it('of one piano never settle a pass of another', () => {
    expect(raiseInputOf([{ ...pass('2026-03-02', -50, 10), pianoId: 'a' }, { ...pass('2026-03-03', -3, 2), pianoId: 'b' }], []).passes).toEqual([]);
  });

  it('say where a stretch stands to be raised, and nothing where it is up', () => {
    expect(standingOfPasses([pass('2026-03-02', -50, null), pass('2026-03-02', -3, 0, { stretch: 'bass' })])).toEqual([{ section: 'tenor', fromCents: -50, targetCents: 0 }]);
  });

  it('become days of drift from stringing on, the whole before the mean of the stretches', () => {
    const days = driftDaysOf([pass('2026-03-01', -99, -95), pass('2026-03-04', -6, 1), pass('2026-03-04', -8, 1, { stretch: 'bass' }), pass('2026-03-12', -2, 0, { stretch: 'whole', temperatureC: 20, humidityPct: 45 })], '2026-03-02');
    expect(days).toEqual([{ dayCount: 2, foundCents: -7, leftCents: 1 }, { dayCount: 10, foundCents: -2, leftCents: 0, temperatureC: 20, humidityPct: 45 }]);
    expect(driftDaysOf([pass('2026-03-03', -40, 5), pass('2026-03-09', -3, 0)], '2026-03-02')).toEqual([{ dayCount: 7, foundCents: -3, leftCents: 0 }]);
    expect(runOperation(tuningDriftOperation, { visits: days, toleranceCents: 3 })).toMatchObject({ ok: true, value: { spanCount: 1, missingSpanCount: 3 } });
  });

  it('suggest a day of the calendar', () => {
    const drift = { spans: 6, fit: { tenfoldCents: -10 as never, tenfoldUncertaintyCents: 1 as never, scatterCents: 0 as never, coverage: 2 } };
    expect(suggestedVisitOf(drift, '2026-03-02', 99, 10)).toEqual({ day: '2028-11-25', earliest: '2028-01-11', latest: '2031-01-12' });
  });
});
