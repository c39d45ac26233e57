import { compass88, tuningPassSchema, tuningTermsSchema } from '#instrument';
import { describe, expect, it } from 'vitest';
import { emptyPass, passFormOf, passOf } from './pass-draft.ts';
import { octavesTyped, tuningFormOf, tuningTermsOf } from './tuning-terms.ts';

const terms = tuningTermsSchema.parse({ temperament: 'well1691', root: 'D', octaves: [{ fromKey: 1, toKey: 27, type: '6:3' }, { fromKey: 20, toKey: 76, type: '4:2' }], curveToleranceCt: 1.5, strungOn: '2026-03-02', remark: 'x' });

describe('the terms of the tuning as typed', () => {
  it('come back as they stood, figures in the reader’s decimals, keys by their notes', () => {
    const form = tuningFormOf(compass88)(terms, 'de-DE');
    expect(form).toMatchObject({ octaves: 'A0–B2 6:3, E2–C7 4:2', curveToleranceCt: '1,5' });
    expect(tuningTermsOf(compass88)(form, terms, 'de-DE')).toMatchObject({ ok: true, value: terms });
  });

  it('understand octaves by notes or numbers, and name what they did not understand', () => {
    expect(octavesTyped('a0-b2 6:3; 28 bis 51 4:2', compass88)).toEqual({ ok: true, value: [{ fromKey: 1, toKey: 27, type: '6:3' }, { fromKey: 28, toKey: 51, type: '4:2' }] });
    expect(octavesTyped('A0–B2 6:3, C3–B4 5:2, B4–C3 4:2', compass88)).toMatchObject({ ok: false, issues: [{ path: 'octaves', given: 'C3–B4 5:2' }, { given: 'B4–C3 4:2' }] });
    expect(octavesTyped('  ', compass88)).toEqual({ ok: true, value: [] });
  });

  it('are refused by field', () => {
    const form = { ...tuningFormOf(compass88)(null, 'en'), curveToleranceCt: 'much', smoothness: '-1' };
    const result = tuningTermsOf(compass88)(form, null, 'en');
    expect(result.ok ? [] : result.issues.map(({ path }) => path)).toEqual(['curveToleranceCt']);
    const other = tuningTermsOf(compass88)({ ...form, curveToleranceCt: '' }, null, 'en');
    expect(other.ok ? [] : other.issues.map(({ path }) => path)).toEqual(['smoothness']);
  });
});

describe('a pass as typed', () => {
  it('comes back as it stood', () => {
    const pass = tuningPassSchema.parse({ cycle: 1, day: '2026-03-02', time: '09:30', stretch: 'bass', foundCt: -40.5, leftCt: null, humidityPct: 44, remark: 'new wire', id: 'p', at: 'x' });
    const { id: _, at: __, ...draft } = pass;
    expect(passOf(passFormOf(pass, 'de-DE'), 1, 'de-DE')).toEqual({ ok: true, value: draft });
  });

  it('takes a time without its first nought, a minus of either kind and a decimal comma', () => {
    expect(passOf({ ...emptyPass('2026-03-02'), time: '9.30', foundCt: '−12,5', leftCt: '-3' }, 2, 'de-DE')).toMatchObject({ ok: true, value: { cycle: 2, time: '09:30', foundCt: -12.5, leftCt: -3, temperatureC: null } });
  });

  it('asks for the pitch found and the day, and refuses a time that is none', () => {
    const paths = (form: Partial<ReturnType<typeof emptyPass>>) => { const result = passOf({ ...emptyPass('2026-03-02'), ...form }, 1, 'en'); return result.ok ? [] : result.issues.map(({ code, path }) => `${code} ${path}`); };
    expect(paths({})).toEqual(['required foundCt']);
    expect(paths({ day: '', foundCt: '3' })).toEqual(['required day']);
    expect(paths({ foundCt: '3', time: 'noon' })).toEqual(['format time']);
  });
});
