import { actionTermsSchema, compass88 } from '#instrument';
import { describe, expect, it } from 'vitest';
import { planFormOf, planTermsOf } from './plan-terms.ts';
import { readShifts, shiftDraftOf, stepped } from './shift-draft.ts';

const [formOf, termsOf] = [planFormOf(compass88), planTermsOf(compass88)];

describe('the terms of the plan as a form', () => {
  const standing = actionTermsSchema.parse({
    hammerCurve: 'anchors', hammerAnchors: [{ key: 1, weightG: 10.5 }, { key: 40, weightG: 8 }, { key: 88, weightG: 5.3 }], frictionBassG: 12.5, drillsMm: [12.7], mostLeads: 5, remark: 'kept',
  });

  it('come back as they stood, in either locale, with what other forms state left as it is', () => {
    for (const locale of ['en-GB', 'de-DE']) {
      const again = termsOf(formOf(standing, locale), standing, locale);
      expect(again.ok && actionTermsSchema.parse(again.value)).toEqual(standing);
    }
    expect(formOf(standing, 'de-DE')).toMatchObject({ frictionBassG: '12,5', anchors: [{ key: 'A0', weight: '10,5' }, { key: 'C4' }, { key: 'C8' }] });
  });

  it('are refused by field: a note that is none, a weight left out, a figure that cannot be', () => {
    const form = { ...formOf(standing, 'en'), anchors: [{ key: 'Q9', weight: '10' }, { key: 'C4', weight: '' }, { key: 'C8', weight: '5' }], frictionBassG: 'much' };
    const refused = termsOf(form, standing, 'en');
    expect(refused.ok ? [] : refused.issues.map(({ path }) => path).sort()).toEqual(['frictionBassG', 'hammerAnchors[0].key', 'hammerAnchors[1].weightG']);
    expect(termsOf({ ...formOf(standing, 'en'), weightRatioNatural: '45' }, standing, 'en')).toMatchObject({ ok: false, issues: [{ path: 'weightRatioNatural' }] });
  });

  it('keep the anchors typed before while another curve is chosen', () => {
    const turned = termsOf({ ...formOf(standing, 'en'), hammerCurve: 'smoothed' }, standing, 'en');
    expect(turned.ok && turned.value.hammerAnchors).toEqual(standing.hammerAnchors);
  });
});

describe('what is tried', () => {
  const nothing = shiftDraftOf(null, 'de-DE');

  it('is read in the reader’s locale; a wrong field counts as not stated and is named', () => {
    expect(readShifts({ ...nothing, rollerShiftMm: '0,75' }, 'de-DE')).toMatchObject({ terms: { rollerShiftMm: 0.75, capstanShiftMm: null }, issues: [] });
    expect(readShifts({ ...nothing, rollerShiftMm: '9' }, 'de-DE')).toMatchObject({ terms: { rollerShiftMm: null }, issues: [{ path: 'rollerShiftMm', given: 9 }] });
    expect(readShifts({ ...nothing, hammerChangeG: '1', hammerChangePct: '2' }, 'de-DE')).toMatchObject({ terms: { hammerChangeG: 1, hammerChangePct: null }, issues: [{ path: 'hammerChangePct' }] });
  });

  it('steps from nothing and back to nought without a crumb', () => {
    expect(stepped('', { unit: 'g', step: 0.1 }, 1, 'de-DE')).toBe('0,1');
    expect(['0', '0.1', '0.2'].map((typed) => stepped(typed, { unit: 'g', step: 0.1 }, 1, 'en'))).toEqual(['0.1', '0.2', '0.3']);
    expect(stepped('0.25', { unit: 'mm', step: 0.25 }, -1, 'en')).toBe('0');
    expect(stepped('0', { unit: 'mm', step: 0.5 }, -1, 'en')).toBe('-0.5');
    expect(stepped('1,85 g/cm³', { unit: 'gcm3', step: 0.05 }, 1, 'de')).toBe('1,9');
  });
});
