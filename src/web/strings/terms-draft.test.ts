import { scaleTermsSchema } from '#instrument';
import { describe, expect, it } from 'vitest';
import { emptyWire, formOf, termsOf } from './terms-draft.ts';

const standing = scaleTermsSchema.parse({ leastBreakingPct: 30, mostBreakingPct: 65, bearingTargetDeg: 1, wires: [{ name: 'coil', use: 'plain', metal: 'steel', diameterMm: 1.05, certificateMPa: 2300 }] });

describe('the terms of the strings as typed', () => {
  it('come back as they stood, figures in the reader’s decimals', () => {
    const form = formOf(standing, 'de-DE');
    expect(form.wires[0]).toMatchObject({ diameterMm: '1,05', certificateMPa: '2300', testBreakN: '' });
    expect(termsOf(form, standing, 'de-DE')).toMatchObject({ ok: true, value: standing });
  });

  it('leave what is asked of the bearing as it stands', () => {
    expect(termsOf({ ...formOf(standing, 'en'), mostBreakingPct: '' }, standing, 'en')).toMatchObject({ ok: true, value: { mostBreakingPct: null, bearingTargetDeg: 1 } });
  });

  it('are refused field by field: bounds the wrong way round, a wire without a diameter, a text for a figure', () => {
    const form = formOf(null, 'en');
    const paths = (result: ReturnType<typeof termsOf>): readonly string[] => (result.ok ? [] : result.issues.map(({ path }) => path));
    expect(paths(termsOf({ ...form, leastBreakingPct: '70', mostBreakingPct: '60' }, null, 'en'))).toEqual(['mostBreakingPct']);
    expect(paths(termsOf({ ...form, lengthUncertaintyMm: 'half', wires: [{ ...emptyWire, name: 'coil' }] }, null, 'en')).toSorted()).toEqual(['lengthUncertaintyMm', 'wires[0].diameterMm']);
  });
});
