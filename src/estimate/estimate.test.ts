import { runOperation } from '#operation';
import { mustBe } from '#result';
import { createSay } from '#text';
import { type Estimate, type EstimateDraft, type Quote, answerIssues, estimateIssues, estimateSchema, sendIssues } from '#workshop';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decisionOf, estimateFiguresOf, estimateTable, itemCostOperation, jobPriceAsked, jobPriceOperation, learntHoursOf, linesOfWay, offerOf, quoteFiguresOf, quoteTable, workCostOperation } from './index.ts';

const DRAFT: EstimateDraft = {
  currency: 'EUR', rateMinor: 6000, overheadPct: 10, contingency: { kind: 'pct', pct: 5 }, pricing: { kind: 'markup', pct: 20 }, tax: { regime: 'ordinary', ratePct: 19 },
  alternatives: [{ id: 'full', words: 'Full', months: 8 }, { id: 'asIs', words: 'As is', months: 1 }],
  lines: [
    { kind: 'labour', id: 'a', words: 'Restring', operation: 'stringing', low: 30, likely: 38, high: 55, ways: ['full'] },
    { kind: 'labour', id: 'b', words: 'Repair block', low: 12, likely: 20, high: 45, chancePct: 20, ways: ['full'] },
    { kind: 'part', id: 'c', words: 'Pins', priceMinor: 95, quantity: 230.5, leadDays: 14, ways: ['full'] },
    { kind: 'outside', id: 'd', words: 'Moving', priceMinor: 68_000, leadDays: 30, ways: ['full', 'asIs'] },
  ],
};
const estimateOf = (more: Partial<EstimateDraft> = {}): Estimate => estimateSchema.parse({ ...DRAFT, ...more });
const figuresOf = (estimate: Estimate, id = 'full') => mustBe(estimateFiguresOf(estimate, { id }));
const say = createSay('en');

const quoteOf = (estimate: Estimate, more: Partial<Quote> = {}): Quote => {
  const [alternative] = estimate.alternatives;
  if (alternative === undefined) throw new Error('no alternative');
  return {
    cycle: 1, alternative: alternative.id, customer: null, validUntil: '2026-03-31', stages: [{ words: 'Deposit', share: 1 }, { words: 'Stringing', share: 1 }, { words: 'End', share: 1 }], notIncluded: [], remark: '', replaces: null,
    ...offerOf(estimate, alternative, figuresOf(estimate, alternative.id)), id: 'q', version: 1, madeAt: '2026-02-01T00:00:00.000Z', state: 'draft', sentOn: null, answeredOn: null, acceptedLines: null, ...more,
  };
};

describe('an estimate in money', () => {
  it('comes out as worked by hand: 39.5 h, 4.5667 h by chance, parts, others, 5 % doubt, 10 % overhead, 20 % on top, 19 % tax', () => {
    const figures = figuresOf(estimateOf());
    // (30 + 4·38 + 55)/6 · 60.00 = 2370.00; (12 + 80 + 45)/6 · 20 % · 60.00 = 274.00; 230.5 · 0.95 = 218.975 → 218.98; 680.00
    expect(figures.lines.map(({ costMinor }) => costMinor)).toEqual([237_000, 27_400, 21_898, 68_000]);
    // sum 3542.98; 5 % 177.149 → 177.15; 10 % of 3720.13 = 372.013 → 372.01; cost 4092.14; · 1.2 = 4910.568 → 4910.57; tax 933.0083 → 933.01
    expect(figures).toMatchObject({ labourMinor: 264_400, partsMinor: 21_898, outsideMinor: 68_000, contingencyMinor: 17_715, overheadMinor: 37_201, costMinor: 409_214, profitMinor: 81_843, netMinor: 491_057, taxMinor: 93_301, totalMinor: 584_358, longestLeadDays: 30 });
    expect(figures.expectedH).toBeCloseTo(39.5 + 137 / 30, 12);
  });

  it.each(['half-up', 'half-even', 'down'] as const)('adds up to the last unit, rounding %s, whatever it holds', (rounding) => {
    fc.assert(fc.property(fc.array(fc.record({ priceMinor: fc.integer({ min: 0, max: 1e7 }), quantity: fc.double({ min: 0.01, max: 999, noNaN: true }) }), { minLength: 1, maxLength: 9 }), fc.double({ min: 0, max: 90, noNaN: true }), fc.constantFrom('markup', 'margin'), (parts, pct, kind) => {
      const estimate = estimateOf({ rounding, pricing: { kind, pct }, overheadPct: pct, lines: parts.map((part, index) => ({ kind: 'part', id: `p${String(index)}`, words: 'Part', ways: ['full'], ...part })) });
      const f = figuresOf(estimate);
      expect(f.labourMinor + f.partsMinor + f.outsideMinor + f.contingencyMinor + f.overheadMinor).toBe(f.costMinor);
      expect(f.costMinor + f.profitMinor).toBe(f.netMinor);
      expect(f.netMinor + f.taxMinor).toBe(f.totalMinor);
      expect(f.lines.reduce((sum, { costMinor }) => sum + costMinor, 0)).toBe(f.partsMinor);
      const offer = offerOf(estimate, { id: 'full', words: 'Full', saleMinor: null, months: 0 }, f);
      expect(offer.lines.reduce((sum, { amountMinor }) => sum + amountMinor, 0)).toBe(f.costMinor === 0 ? 0 : f.netMinor);
      if (f.costMinor > 0) expect(quoteFiguresOf(quoteOf(estimate)).totalMinor).toBe(f.totalMinor);
    }), { numRuns: 60 });
  });

  it('opens every sum to operations that give it to the last unit, from the estimate as stated', () => {
    fc.assert(fc.property(fc.constantFrom('half-up', 'half-even', 'down'), fc.constantFrom('none', 'pct', 'p80', 'p90'), fc.constantFrom('ordinary', 'margin', 'export'), fc.integer({ min: 0, max: 99_999 }), fc.double({ min: 0.01, max: 99, noNaN: true }), (rounding, kind, regime, rateMinor, pct) => {
      const estimate = estimateOf({ rounding, rateMinor, contingency: { kind, pct }, overheadPct: pct, pricing: { kind: 'margin', pct: pct / 2 }, tax: { regime, ratePct: 19 }, owner: 'shop', purchaseMinor: 850_000 });
      const f = figuresOf(estimate);
      const [currency, way] = [estimate.currency, { id: 'full' }];
      const work = mustBe(runOperation(workCostOperation, { tasks: linesOfWay(estimate, way, 'labour').map(({ words: name, low, likely, high, chancePct }) => ({ name, low, likely, high, chancePct, rateMinor })), currency, rounding }));
      expect(work.sumMinor).toBe(f.labourMinor);
      expect(work.amounts.map(({ amountMinor }) => amountMinor)).toEqual(f.lines.slice(0, 2).map(({ costMinor }) => costMinor));
      expect(work.amounts.every(({ exactMinor, amountMinor }) => Math.abs(exactMinor - amountMinor) < 1)).toBe(true);
      const items = linesOfWay(estimate, way, 'part').map(({ quantity, priceMinor }) => ({ quantity, priceMinor }));
      expect(mustBe(runOperation(itemCostOperation, { items, currency, rounding })).sumMinor).toBe(f.partsMinor);
      const price = mustBe(runOperation(jobPriceOperation, { ...jobPriceAsked(estimate, { labourMinor: f.labourMinor, partsMinor: f.partsMinor, outsideMinor: f.outsideMinor }, f.hours), currency }));
      for (const name of ['contingencyMinor', 'overheadMinor', 'costMinor', 'profitMinor', 'netMinor', 'taxMinor', 'totalMinor'] as const) expect([name, price[name]]).toEqual([name, f[name]]);
      expect(price.addedH).toBe(f.contingencyH);
    }), { numRuns: 25 });
  });

  it('tells the sums of no lines as nought, and refuses a margin of the whole price', () => {
    expect(mustBe(runOperation(itemCostOperation, { items: [], currency: 'EUR' }))).toEqual({ amounts: [], sumMinor: 0 });
    expect(runOperation(jobPriceOperation, { labourMinor: 1, partsMinor: 0, outsideMinor: 0, overheadPct: 0, pricing: 'margin', pricingPct: 100, regime: 'none', currency: 'EUR' })).toMatchObject({ ok: false, issues: [{ path: 'pricingPct', given: 100 }] });
    expect(runOperation(workCostOperation, { tasks: [{ low: 3, likely: 2, high: 5, rateMinor: 1 }], currency: 'EUR' })).toMatchObject({ ok: false, issues: [{ path: 'tasks[0].likely' }] });
  });

  it('takes doubt from the hours: what lies between mean and P80, at the rate', () => {
    const figures = figuresOf(estimateOf({ contingency: { kind: 'p80', pct: 0 } }));
    const up = (figures.hours?.p80H ?? 0) - figures.expectedH;
    expect(figures.contingencyH).toBeGreaterThanOrEqual(up);
    expect(figures.contingencyH - up).toBeLessThan(0.01);
    expect(figures.contingencyMinor).toBe(Math.round(figures.contingencyH * 6000));
  });

  it('keeps restoration out of the purchase under the margin scheme', () => {
    const shop = { owner: 'shop', purchaseMinor: 850_000 } as const;
    const margin = figuresOf(estimateOf({ ...shop, tax: { regime: 'margin', ratePct: 20 } }));
    expect(margin.taxMinor).toBe(Math.round(margin.netMinor * 0.2));
    expect(margin.totalMinor).toBe(850_000 + margin.netMinor + margin.taxMinor);
    // The same tax as taken out of the margin of the sale: (sale − purchase)/6.
    expect(margin.taxMinor).toBe(Math.round((margin.totalMinor - 850_000) / 6));
    expect(figuresOf(estimateOf({ ...shop, tax: { regime: 'export', ratePct: 20 } })).taxMinor).toBe(0);
  });

  it('is refused where it is too large to be held, and has no hours where there is no work', () => {
    expect(estimateFiguresOf(estimateOf({ lines: [{ kind: 'part', id: 'x', words: 'x', priceMinor: Number.MAX_SAFE_INTEGER, quantity: 3, ways: ['full'] }] }), { id: 'full' })).toMatchObject({ ok: false, issues: [{ code: 'range', path: 'lines[0]' }] });
    expect(figuresOf(estimateOf(), 'asIs')).toMatchObject({ expectedH: 0, labourMinor: 0, contingencyH: 0 });
  });

  it('stands in its table with the same figures to the last unit', () => {
    const { header, rows } = mustBe(estimateTable(estimateOf(), say));
    expect(header).toEqual(['alternative', 'kind', 'words', 'expectedH', 'amountMinor', 'amount', 'currency']);
    expect(rows.find(([way, kind]) => way === 'Full' && kind === 'total')?.slice(4)).toEqual([584_358, '5843.58', 'EUR']);
    expect(rows).toHaveLength(4 + 10 + 1 + 10);
  });
});

describe('what an estimate may not be', () => {
  it('names the cell: currency, hours, ways, ids, margin, purchase', () => {
    const issues = estimateIssues(estimateOf({
      currency: 'XXX', owner: 'shop', pricing: { kind: 'margin', pct: 100 },
      lines: [{ kind: 'labour', id: 'a', words: 'x', low: 5, likely: 4, high: 9, ways: ['nowhere'] }, { kind: 'labour', id: 'a', words: 'y', low: 1, likely: 2, high: 1, ways: [] }],
    }));
    expect(issues.map(({ code, path }) => `${code} ${path}`)).toEqual(['choice currency', 'range pricing.pct', 'required purchaseMinor', 'duplicate lines[1].id', 'order lines[0].likely', 'choice lines[0].ways[0]', 'order lines[1].high']);
    expect(estimateSchema.safeParse({ ...DRAFT, rateMinor: 12.5 }).success).toBe(false);
    expect(estimateSchema.safeParse({ ...DRAFT, rateMinor: -1 }).success).toBe(false);
  });
});

describe('the decision', () => {
  it('takes a sale with its tax, and says the lowest price that does not lose', () => {
    const { ways, ranking } = mustBe(decisionOf(estimateOf({
      owner: 'shop', purchaseMinor: 850_000, tax: { regime: 'margin', ratePct: 20 }, overheadPct: 0, annualRatePct: 10,
      alternatives: [{ id: 'full', words: 'Full', saleMinor: 3_200_000, months: 14 }, { id: 'asIs', words: 'As is', saleMinor: 1_100_000, months: 2 }],
      lines: [{ kind: 'part', id: 'p', words: 'All of it, net', priceMinor: 700_000, ways: ['full'] }],
    })));
    // 32000 − (32000 − 8500)/6 = 28083.33 in; 8500 + 7000 out: the worked case leaves 12583.33.
    expect(ways[0]).toMatchObject({ profitMinor: 1_258_333, perBenchHourMinor: null, paybackMonth: 14 });
    expect(ways[0]?.flows).toEqual([{ month: 0, amountMinor: -1_550_000 }, { month: 14, amountMinor: 2_808_333 }]);
    expect(ways[0]?.npvMinor).toBe(Math.round(-1_550_000 + 2_808_333 / 1.1 ** (14 / 12)));
    expect(ways[0]?.breakEvenMinor).toBeGreaterThan(1_550_000);
    expect(ranking).toEqual(['full', 'asIs']);
  });
});

describe('a quote', () => {
  const estimate = estimateOf();

  it('sums to the price, taken whole or by line, and its stages sum to that', () => {
    const whole = quoteFiguresOf(quoteOf(estimate));
    expect(whole).toMatchObject({ sumMinor: 491_057, taxMinor: 93_301, totalMinor: 584_358 });
    expect(whole.stages.map(({ amountMinor }) => amountMinor)).toEqual([194_786, 194_786, 194_786]);
    const part = quoteFiguresOf(quoteOf(estimate, { acceptedLines: ['a', 'd'] }));
    expect(part.lines.map(({ id }) => id)).toEqual(['a', 'd']);
    expect(part.totalMinor).toBe(part.sumMinor + part.taxMinor);
    expect(part.stages.reduce((sum, { amountMinor }) => sum + amountMinor, 0)).toBe(part.totalMinor);
  });

  it('of the shop’s own instrument is one price, tax included, and shows none under the margin scheme', () => {
    const shop = (regime: 'margin' | 'ordinary') => quoteFiguresOf(quoteOf(estimateOf({ owner: 'shop', purchaseMinor: 850_000, tax: { regime, ratePct: 20 }, alternatives: [{ id: 'full', words: 'Grand, restored', saleMinor: 3_200_000 }] , lines: DRAFT.lines.map((line) => ({ ...line, ways: ['full'] })) })));
    expect(shop('margin')).toMatchObject({ totalMinor: 3_200_000, taxMinor: 0, lines: [{ id: 'instrument', words: 'Grand, restored', amountMinor: 3_200_000 }] });
    expect(shop('ordinary')).toMatchObject({ totalMinor: 3_200_000, taxMinor: 533_333 });
  });

  it('stands in its table to the last unit', () => {
    const { rows } = quoteTable({ say, quote: quoteOf(estimate) });
    expect(rows.filter(([kind]) => kind === 'line').reduce((sum, [, , , minor]) => sum + Number(minor), 0)).toBe(491_057);
    expect(rows.find(([kind]) => kind === 'total')).toEqual(['total', '', 'Total', 584_358, '5843.58', 'EUR']);
  });

  it('keeps its dates in order', () => {
    const draft = quoteOf(estimate);
    expect(sendIssues(draft, '2026-04-01')).toMatchObject([{ code: 'order', path: 'validUntil' }]);
    expect(sendIssues(draft, '2026-03-31')).toEqual([]);
    const sent = quoteOf(estimate, { state: 'sent', sentOn: '2026-02-16' });
    expect(sendIssues(sent, '2026-02-17')).toMatchObject([{ code: 'conflict', path: 'state' }]);
    const faults = (answer: Parameters<typeof answerIssues>[1]) => answerIssues(sent, answer).map(({ params, code }) => params?.['reason'] ?? code);
    expect(faults({ answer: 'accepted', on: '2026-02-15' })).toEqual(['answeredBeforeSent']);
    expect(faults({ answer: 'accepted', on: '2026-04-01' })).toEqual(['acceptedTooLate']);
    expect(faults({ answer: 'lapsed', on: '2026-03-31' })).toEqual(['notLapsed']);
    expect(faults({ answer: 'lapsed', on: '2026-04-01' })).toEqual([]);
    expect(faults({ answer: 'declined', on: '2026-02-20', lines: ['a'] })).toEqual(['unknown']);
    expect(faults({ answer: 'accepted', on: '2026-02-20', lines: ['a', 'nope'] })).toEqual(['choice']);
    expect(answerIssues(draft, { answer: 'declined', on: '2026-02-20' })).toMatchObject([{ code: 'conflict' }]);
  });
});

describe('hours learnt', () => {
  const done = (actualH: number | null, operation = 'stringing') => ({ lines: estimateOf({ lines: [{ kind: 'labour', id: 'a', words: 'x', operation, low: 10, likely: 10, high: 10, actualH, ways: [] }] }).lines });

  it('are the geometric mean of actual over expected, with its spread, from three jobs on', () => {
    expect(learntHoursOf([done(20), done(5)])).toEqual([]);
    const [learnt] = learntHoursOf([done(20), done(5), done(10), done(null), done(99, 'leads')]);
    expect(learnt).toMatchObject({ operation: 'stringing', jobs: 3 });
    expect(learnt?.factor).toBeCloseTo(1, 12);
    // Logs ln 2, −ln 2, 0: standard deviation ln 2.
    expect(learnt?.highFactor).toBeCloseTo(2 ** 1.2815515655446004, 12);
    expect(learnt?.lowFactor).toBeCloseTo(2 ** -1.2815515655446004, 12);
    // Took 20, 5 and 10 hours: the geometric mean is 10, the standard deviation of the logs ln 2.
    expect(learnt?.hours.likely).toBeCloseTo(10, 12);
    expect(learnt?.hours.low).toBeCloseTo(10 * 2 ** -1.2815515655446004, 12);
    expect(learnt?.hours.high).toBeCloseTo(10 * 2 ** 1.2815515655446004, 12);
  });
});
