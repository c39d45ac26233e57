import { createSay } from '#text';
import { type Estimate, type ShopCard, estimateSchema, shopCardSchema } from '#workshop';
import { describe, expect, it } from 'vitest';
import { ratesFormOf, ratesOf, ratesOfForm } from './rates-draft.ts';
import { estimateFormOf } from './terms-draft.ts';

const rates = (id: string, more: object = {}): ShopCard => shopCardSchema.parse({ kind: 'rates', id, workshopId: 'shop', at: '', changedAt: '', sequence: 0, currency: 'EUR', rateMinor: 6550, wageMinor: 2800, overheadPct: 12.5, details: null, ...more });
const last: Estimate = estimateSchema.parse({ currency: 'GBP', rateMinor: 4000, overheadPct: 5, contingency: { kind: 'p90' }, pricing: { kind: 'margin', pct: 30 }, tax: { regime: 'none', ratePct: 0 }, alternatives: [{ id: 'a', words: 'A' }], lines: [] });
const telling = { say: createSay('en'), locale: 'en' };

describe('the rates of the shop', () => {
  it('are the newest stated, each workshop’s its own', () => {
    const cards = [rates('a'), rates('b', { rateMinor: 7000 }), rates('c', { workshopId: 'demo', rateMinor: 1 })];
    expect(ratesOf(cards, 'shop')).toMatchObject({ id: 'b' });
    expect(ratesOf([], 'shop')).toBeUndefined();
  });

  it('come back from their form as they went in', () => {
    const stated = ratesOfForm(ratesFormOf(ratesOf([rates('a')], 'shop'), 'de'), 'de');
    expect(stated.ok && stated.value).toMatchObject({ currency: 'EUR', rateMinor: 6550, wageMinor: 2800, overheadPct: 12.5 });
  });

  it('are refused with a currency that is none, more digits than it has, or no price of an hour', () => {
    const refused = (form: Partial<Parameters<typeof ratesOfForm>[0]>) => { const stated = ratesOfForm({ currency: 'EUR', rate: '65', wage: '', overhead: '', ...form }, 'en'); return stated.ok ? [] : stated.issues.map(({ path }) => path); };
    expect([refused({}), refused({ currency: 'ZZZ' }), refused({ rate: '65.505' }), refused({ rate: '' }), refused({ currency: 'JPY', rate: '65.5' }), refused({ wage: '-1' })])
      .toEqual([[], ['currency'], ['rateMinor'], ['rateMinor'], ['rateMinor'], ['wageMinor']]);
  });

  it('are what a new estimate begins with, before the shop’s last one; what they do not say comes from that', () => {
    const fresh = estimateFormOf(null, last, telling, ratesOf([rates('a')], 'shop'));
    expect(fresh).toMatchObject({ currency: 'EUR', rateMinor: '65.50', wageMinor: '28.00', overheadPct: '12.5', contingency: 'p90', pricing: 'margin', pricingPct: '30' });
    expect(estimateFormOf(null, last, telling)).toMatchObject({ currency: 'GBP', rateMinor: '40.00', overheadPct: '5' });
    expect(estimateFormOf(last, undefined, telling, ratesOf([rates('a')], 'shop'))).toMatchObject({ currency: 'GBP', rateMinor: '40.00' });
  });
});
