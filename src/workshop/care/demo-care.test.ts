import { expect, it } from 'vitest';
import { careIssues } from './checks.ts';
import { demoCare, demoLoggerText } from './demo-care.ts';
import { asksOf, guessLogger } from './guess-logger.ts';
import { airHoursOf } from './hours.ts';
import { airOutlookOf } from './outlook.ts';
import { readLogger } from './read-logger.ts';
import { type LoggerReading, careDraftSchema } from './records.ts';
import { usualPlan } from './usual.ts';

it('has a year of invented air that is read without a question and is too dry in winter', () => {
  const rows = demoLoggerText().split('\n').map((line) => line.split(';'));
  const guess = guessLogger(rows);
  expect(asksOf(guess)).toEqual([]);
  const { readings, refused } = readLogger(rows, guess as LoggerReading);
  expect(refused).toEqual([]);
  expect(readings).toHaveLength(364 * 24);
  const outlook = airOutlookOf(airHoursOf(readings), usualPlan);
  expect(outlook?.watch.dryHours).toBeGreaterThan(24);
  expect(outlook?.humidity.most).toBeLessThan(100);
});

it('has invented cards that fit what is asked of any', () => {
  for (const draft of demoCare()) expect(careIssues(careDraftSchema.parse(draft))).toEqual([]);
});
