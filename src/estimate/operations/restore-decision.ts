import { LARGEST_MINOR } from '#money';
import { defineOperation, field } from '#operation';
import { type Result, all, map, ok, refuse } from '#result';
import { z } from 'zod';
import { paybackMonthOf, presentValueOf, rateOfReturnOf, signChangesOf } from '../decide/cash-flow.ts';
import { cashFlowsField, rateField } from './flow-fields.ts';

const option = z.strictObject({
  name: z.string().min(1).max(200).describe('What is done, such as restore, sell as is, decline'),
  cashFlows: cashFlowsField,
  benchHours: field.number({ min: 0, max: 100_000, describe: 'Hours at the bench' }),
});
type Option = z.output<typeof option>;

/** What to do with an instrument, by what it leaves. */
export const restoreDecisionOperation = defineOperation({
  name: 'restore-decision',
  input: z.strictObject({ options: z.array(option).min(1).max(100), annualRatePct: rateField }),
  output: z.strictObject({
    npvMinor: z.array(field.minor({ describe: 'Present value of each option, in their order' })),
    profitMinor: z.array(field.minor({ describe: 'What comes in less what goes out, not discounted' })),
    perBenchHourMinor: z.array(field.minor({ describe: 'Profit for each hour at the bench; null where there is none' }).nullable()),
    paybackMonth: z.array(field.number({ describe: 'Month from which on what came in is never below what went out; null for never' }).nullable()),
    irrPct: z.array(field.number({ describe: 'Rate of return a year; null unless the flows change sign exactly once. It says nothing of how much is earned' }).nullable()),
    signChanges: z.array(field.count({ describe: 'How often the flows change between in and out' })),
    ranking: z.array(z.string().describe('Names by present value, the best first')),
    irrDisagrees: z.boolean().describe('True where ranking by rate of return would put another option first'),
  }),
  formula: [
    'NPV = Σ CFₜ/(1 + r)^(t/12), rounded half-up to the smallest unit',
    'per bench hour = Σ CFₜ/hours',
    'payback = first month from which on Σ CF ≥ 0 stays true',
    'rate of return: NPV = 0, looked for only where the flows change sign once',
  ],
  sources: ['BREALEY-MYERS', 'DESCARTES-1637'],
  example: {
    annualRatePct: 10,
    options: [
      { name: 'restore', cashFlows: [{ month: 0, amountMinor: -850_000 }, { month: 6, amountMinor: -700_000 }, { month: 14, amountMinor: 2_808_333 }], benchHours: 260 },
      { name: 'as is', cashFlows: [{ month: 0, amountMinor: -850_000 }, { month: 2, amountMinor: 1_083_333 }], benchHours: 6 },
    ],
  },
  run: ({ options, annualRatePct }) => map(all(options.map((one, index) => figuresOf(one, index, annualRatePct))), (figures) => ({
    npvMinor: figures.map(({ npv }) => npv),
    profitMinor: figures.map(({ profit }) => profit),
    perBenchHourMinor: figures.map(({ perHour }) => perHour),
    paybackMonth: options.map(({ cashFlows }) => paybackMonthOf(cashFlows)),
    irrPct: figures.map(({ irr }) => irr),
    signChanges: options.map(({ cashFlows }) => signChangesOf(cashFlows)),
    ranking: ranked(figures, ({ npv }) => npv).map(({ name }) => name),
    irrDisagrees: disagrees(figures),
  })),
});

interface Figures {
  readonly name: string;
  readonly npv: number;
  readonly profit: number;
  readonly perHour: number | null;
  readonly irr: number | null;
}

function figuresOf({ name, cashFlows, benchHours }: Option, index: number, annualRatePct: number): Result<Figures> {
  const npv = roundHalfUp(presentValueOf(cashFlows, annualRatePct));
  const profit = cashFlows.reduce((sum, { amountMinor }) => sum + amountMinor, 0);
  const perHour = benchHours === 0 ? null : roundHalfUp(profit / benchHours);
  const unsafe = [npv, profit, perHour ?? 0].find((figure) => !Number.isSafeInteger(figure));
  if (unsafe === undefined) return ok({ name, npv, profit, perHour, irr: rateOfReturnOf(cashFlows) });
  return refuse({ code: 'range', path: `options[${String(index)}]`, given: unsafe, allowed: `figures between −${String(LARGEST_MINOR)} and ${String(LARGEST_MINOR)} smallest units`, params: { reason: 'amountTooLarge', min: -LARGEST_MINOR, max: LARGEST_MINOR } });
}

/** Halves away from nought. */
function roundHalfUp(value: number): number {
  const rounded = Math.sign(value) * Math.round(Math.abs(value));
  return rounded === 0 ? 0 : rounded;
}

function ranked(figures: readonly Figures[], by: (one: Figures) => number): readonly Figures[] {
  return [...figures].sort((a, b) => by(b) - by(a));
}

function disagrees(figures: readonly Figures[]): boolean {
  const rated = figures.filter(({ irr }) => irr !== null);
  return rated.length > 1 && ranked(rated, ({ irr }) => irr ?? 0)[0] !== ranked(rated, ({ npv }) => npv)[0];
}
