import { defineOperation, field } from '#operation';
import { refuse } from '#result';
import { z } from 'zod';
import { expectedHoursOf, numberOf, workCostOf } from '../line-cost.ts';
import { costAnswer, costOfLines, lineName } from './cost-lines.ts';
import { currencyField, roundingField } from './money-fields.ts';
import { orderIssues, threePoints } from './three-point-hours.ts';

/** What work costs, line by line and in all. */
export const workCostOperation = defineOperation({
  name: 'work-cost',
  input: z.strictObject({
    tasks: z.array(z.strictObject({ name: lineName, ...threePoints, rateMinor: field.minor({ min: 0, describe: 'Price of an hour at it' }) })).max(1000),
    currency: currencyField, rounding: roundingField,
  }),
  output: costAnswer({ expectedH: field.number({ describe: 'Hours to be expected, with the chance that the work comes up' }), rateMinor: field.minor({ describe: 'Price of an hour at it' }) }),
  formula: ['h = p·(a + 4m + b)/6', 'amount = h·rate, rounded once', 'sum = Σ amount'],
  sources: ['PERT-1959', 'OWN'],
  example: { tasks: [{ name: 'Restring', low: 30, likely: 38, high: 55, rateMinor: 6000 }, { name: 'Repair block', low: 12, likely: 20, high: 45, chancePct: 20, rateMinor: 6000 }], currency: 'EUR' },
  run: ({ tasks, currency, rounding }) => {
    const issues = tasks.flatMap(orderIssues);
    return issues.length > 0 ? refuse(...issues) : costOfLines({ currency, rounding, path: 'tasks', lines: tasks.map((task) => ({ told: { name: task.name, expectedH: numberOf(expectedHoursOf(task)), rateMinor: task.rateMinor }, exact: workCostOf(task) })) });
  },
});
