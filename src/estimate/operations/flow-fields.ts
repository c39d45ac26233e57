import { field } from '#operation';
import { z } from 'zod';

const LONGEST_MONTHS = 1200;

/** A month counted from now. */
export const monthField = field.count({ min: 0, max: LONGEST_MONTHS, describe: 'Months from now' });

/** Money in and out by month. */
export const cashFlowsField = z.array(z.strictObject({
  month: monthField,
  amountMinor: field.minor({ describe: 'Comes in above nought, goes out below' }),
})).min(1).max(1200);

/** What money costs, a year. */
export const rateField = field.percent({ min: -50, max: 1000, describe: 'What money costs or could earn elsewhere, a year' });
