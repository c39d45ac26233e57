import type { DemoStep } from './demo-step.ts';
import type { EstimateDraft } from './estimate.ts';

type Line = EstimateDraft['lines'][number];
type Hours = readonly [low: number, likely: number, high: number];

const ALL = ['full'];
const BOTH = ['full', 'action'];
const labour = (id: string, words: string, operation: string, [low, likely, high]: Hours, ways: string[], more: { readonly chancePct?: number; readonly actualH?: number } = {}): Line => ({ kind: 'labour', id, words, operation, low, likely, high, ways, ...more });
const part = (id: string, words: string, priceMinor: number, ways: string[], leadDays: number, quantity = 1): Line => ({ kind: 'part', id, words, priceMinor, quantity, leadDays, ways });

/** What the invented shop reckons: prices and hours are made up, in euros. */
const ESTIMATE: EstimateDraft = {
  currency: 'EUR', rounding: 'half-up', rateMinor: 6800, wageMinor: 2600, owner: 'customer', overheadPct: 8,
  contingency: { kind: 'p80', pct: 0 }, pricing: { kind: 'markup', pct: 10 },
  tax: { regime: 'ordinary', ratePct: 19, asOf: '2026-02-01', source: 'Invented for demonstration; a real shop asks its accountant' },
  correlation: 0.3, annualRatePct: 6,
  alternatives: [{ id: 'full', words: 'Full restoration', months: 8 }, { id: 'action', words: 'Action only', months: 3 }, { id: 'asIs', words: 'As is, tuned and cleaned', months: 1 }],
  lines: [
    labour('survey', 'Survey, measuring, plan', 'survey', [6, 8, 12], ['full', 'action', 'asIs'], { actualH: 9 }),
    labour('frictions', 'Free bushings and centres', 'friction', [8, 12, 22], BOTH, { actualH: 14 }),
    labour('hammers', 'Fit hammers, shape, bore', 'hammers', [22, 28, 40], BOTH, { actualH: 31 }),
    labour('leads', 'Lead the keys', 'leads', [8, 11, 18], BOTH, { actualH: 10 }),
    labour('regulate', 'Regulate and voice', 'regulation', [16, 20, 32], BOTH, { actualH: 24 }),
    labour('restring', 'Restring with new pins', 'restringing', [30, 38, 55], ALL, { actualH: 41 }),
    labour('recap', 'Recap treble bridge, set bearing', 'bridges', [18, 26, 44], ALL, { actualH: 33 }),
    labour('block', 'Repair the pin block, should it be cracked', 'pin block', [12, 20, 45], ALL, { chancePct: 20 }),
    labour('tune', 'Raise and settle the pitch, tune', 'tuning', [8, 10, 14], ['full', 'action', 'asIs'], { actualH: 11 }),
    part('hammerSet', 'Set of hammers, drilled', 98_500, BOTH, 42),
    part('wireSet', 'Bass strings to measure', 74_000, ALL, 56),
    part('pins', 'Tuning pins', 95, ALL, 14, 230),
    part('felts', 'Felts, cloths, centre pins', 21_450, BOTH, 14),
    { kind: 'outside', id: 'move', words: 'Moving there and back', priceMinor: 68_000, leadDays: 10, ways: BOTH },
  ],
  remark: 'Invented for demonstration: hours, prices and rates belong to no real shop.',
};

/** The invented estimate, and a quote of it that was sent and taken. */
export function demoWorth(): readonly DemoStep[] {
  return [
    { kind: 'estimate', cycle: 1, draft: ESTIMATE },
    {
      kind: 'quote', sentOn: '2026-02-16', answer: { answer: 'accepted', on: '2026-02-23' },
      draft: {
        cycle: 1, alternative: 'full', validUntil: '2026-03-31',
        stages: [{ words: 'Deposit, when it is accepted', share: 30 }, { words: 'When it is strung', share: 40 }, { words: 'When it is handed over', share: 30 }],
        notIncluded: ['Case and finish', 'Tunings after it was handed over', 'Damage that cannot be seen before it is opened, beyond the share reckoned in'],
        remark: 'Invented for demonstration: no real offer, no real shop, no real customer.',
      },
    },
  ];
}
