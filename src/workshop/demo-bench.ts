import type { InstrumentDraft } from '#instrument';
import type { EstimateDraft } from './estimate.ts';
import type { WorkChange, WorkItemDraft } from './records.ts';
import type { ShopCardDraft } from './shop/records.ts';

type Hours = Extract<ShopCardDraft, { kind: 'hours' }>;

/** One job of the invented upright, and where it stands on the board. */
interface DemoJob {
  readonly item: WorkItemDraft;
  /** What is to be changed of it once it is there; `order` is the id of the strings on order. */
  readonly moved?: (order: string) => WorkChange;
  /** Hours noted for it, with the line of the estimate they count towards. */
  readonly hours?: readonly Pick<Hours, 'on' | 'line' | 'hours' | 'startedAt' | 'stoppedAt'>[];
}

/** An invented piano at the bench: what is done, in hand, and waited for. */
export interface DemoBench {
  readonly draft: InstrumentDraft;
  readonly estimate: EstimateDraft;
  readonly orderOf: (pianoId: string, supplier: string) => ShopCardDraft;
  readonly jobs: readonly DemoJob[];
}

const INVENTED = 'Invented for demonstration. Not a real instrument, not a real shop.';
const DAY_MS = 86_400_000;

/** The invented upright that the bench of the demo is at, its days counted from the one given. @source OWN */
export function demoBench(now: Date): DemoBench {
  const at = (days: number, time: string): string => `${new Date(now.getTime() + days * DAY_MS).toISOString().slice(0, 10)}T${time}:00Z`;
  const on = (days: number): string => at(days, '00:00').slice(0, 10);
  const job = (remark: string, stage: number, rest: Omit<DemoJob, 'item'> = {}): DemoJob => ({ item: { cycle: 1, key: null, remedy: 'other', remark, stage }, ...rest });
  return {
    draft: { name: 'Demo upright, invented', kind: 'upright', year: 1931, lengthMm: 1280, firstMidi: 21, lastMidi: 108, a4Hz: 440, remark: INVENTED },
    estimate: ESTIMATE,
    orderOf: (pianoId, person) => ({
      kind: 'purchase', pianoId, person, status: 'ordered', orderedOn: on(-19), expectedOn: on(9),
      lines: [{ name: 'Wound strings to the sheet sent, invented', amount: 28, unit: 'piece' }], details: { words: INVENTED },
    }),
    jobs: [
      job('Survey, measuring, plan', 5, { moved: () => ({ status: 'done' }), hours: [{ on: on(-12), line: 'survey', hours: 6.5 }] }),
      job('Take off the old strings, clean the plate', 5, { moved: () => ({ status: 'done' }), hours: [{ on: on(-9), line: 'restring', hours: 5 }] }),
      job('Glue the loose rib', 5, { moved: () => ({ waits: { for: 'glue', until: at(1, '07:00') } }), hours: [{ on: on(-1), line: 'board', hours: 3.25 }] }),
      job('String the bass', 5, { moved: (purchase) => ({ waits: { for: 'parts', purchase } }) }),
      job('String the treble, raise the pitch', 5, { moved: () => ({ inHand: true, waits: { for: 'settling', until: at(5, '08:00') } }), hours: [{ on: on(-4), line: 'restring', hours: 8 }, { on: on(-3), line: 'restring', hours: 7.5 }] }),
      { item: { cycle: 1, key: null, remedy: 'repinCentres', stage: 1, remark: 'Hammer centres, all' }, moved: () => ({ inHand: true }), hours: [{ on: on(-2), line: 'frictions', startedAt: at(-2, '08:10'), stoppedAt: at(-2, '11:40') }] },
      ...[14, 41, 57].map((key): DemoJob => ({ item: { cycle: 1, key, remedy: 'easeKeyBushing', stage: 1, remeasure: ['keyFrictionG'] } })),
      job('New damper felts in the tenor', 5),
    ],
  };
}

type Line = EstimateDraft['lines'][number];

const labour = (id: string, words: string, operation: string, [low, likely, high]: readonly [number, number, number]): Line => ({ kind: 'labour', id, words, operation, low, likely, high, ways: ['full'] });

const ESTIMATE: EstimateDraft = {
  currency: 'EUR', rounding: 'half-up', rateMinor: 6800, wageMinor: 2600, owner: 'customer', overheadPct: 8,
  contingency: { kind: 'p80', pct: 0 }, pricing: { kind: 'markup', pct: 10 },
  tax: { regime: 'ordinary', ratePct: 19, asOf: '2026-02-01', source: 'Invented for demonstration; a real shop asks its accountant' },
  correlation: 0.3, annualRatePct: 6,
  alternatives: [{ id: 'full', words: 'Restring and put the action right', months: 4 }],
  lines: [
    labour('survey', 'Survey, measuring, plan', 'survey', [4, 6, 9]),
    labour('board', 'Glue ribs, close cracks', 'soundboard', [3, 5, 9]),
    labour('restring', 'Restring with the old pins', 'restringing', [22, 28, 40]),
    labour('frictions', 'Free bushings and centres', 'friction', [8, 12, 20]),
    labour('regulate', 'Regulate and voice', 'regulation', [12, 16, 24]),
    { kind: 'part', id: 'bass', words: 'Bass strings to measure', priceMinor: 61_000, leadDays: 28, ways: ['full'] },
  ],
  remark: 'Invented for demonstration: hours, prices and rates belong to no real shop.',
};
