import { defineOperation, field } from '#operation';
import { type Issue, ok, refuse } from '#result';
import { z } from 'zod';
import type { HoursTask } from '../hours/simulate.ts';
import { simulateHours } from '../hours/simulate.ts';

const LONGEST_H = 100_000;
/** Draws of all tasks together that one answer may take. */
const MOST_DRAWS = 50_000_000;
const hours = (describe: string) => field.number({ min: 0, max: LONGEST_H, describe });

/** The three points of a task, and its chance. */
export const threePoints = {
  low: hours('Hours when all goes well'),
  likely: hours('Hours most likely'),
  high: hours('Hours when it goes badly'),
  chancePct: field.percent({ min: 0, max: 100, describe: 'How likely the task comes up at all, as for hidden damage' }).default(100 as never),
};

/** Hours of a job from three points a task. */
export const threePointHoursOperation = defineOperation({
  name: 'three-point-hours',
  input: z.strictObject({
    tasks: z.array(z.strictObject(threePoints)).min(1).max(1000),
    correlation: field.number({ min: 0, max: 1, describe: 'How far tasks run over together: 0 each for itself, 1 all alike' }).default(0.3),
    runs: field.count({ min: 1, max: 1_000_000, describe: 'How often the job is drawn' }).default(10_000),
    seed: field.count({ min: 0, max: 4_294_967_295, describe: 'The same seed gives the same figures' }).default(1),
  }),
  output: z.strictObject({
    meanH: field.number({ describe: 'Mean of the runs' }),
    sdH: field.number({ describe: 'Standard deviation of the runs' }),
    p50H: field.number({ describe: 'Hours that half of the runs stay within' }),
    p80H: field.number({ describe: 'Hours that 80 % of the runs stay within' }),
    p90H: field.number({ describe: 'Hours that 90 % of the runs stay within' }),
    exactMeanH: field.number({ describe: 'Mean in closed form' }),
    closedFormSdH: field.number({ describe: 'Standard deviation in closed form, the correlation taken as one of hours' }),
  }),
  formula: [
    'μ = (a + 4m + b)/6, α = 1 + 4(m − a)/(b − a), β = 6 − α, σ² = (μ − a)(b − μ)/7',
    'zᵢ = √ρ·g + √(1 − ρ)·eᵢ, hoursᵢ = a + (b − a)·x with I_x(α, β) = Φ(zᵢ), drawn with chance p',
    'closed form: mean Σpμ; variance Σ(p(σ² + μ²) − p²μ²) + ρ((Σpσ)² − Σp²σ²)',
  ],
  sources: ['PERT-1959', 'NELSEN-2006', 'BLACKMAN-VIGNA-2021', 'PRACTICE'],
  example: { tasks: [{ low: 16, likely: 24, high: 40 }, { low: 8, likely: 12, high: 30 }, { low: 6, likely: 10, high: 20, chancePct: 25 }], correlation: 0.3, runs: 10_000, seed: 1 },
  run: (question) => {
    const issues = question.tasks.flatMap(orderIssues);
    if (issues.length > 0) return refuse(...issues);
    if (question.tasks.length * question.runs > MOST_DRAWS) return refuse({ code: 'range', path: 'runs', given: question.runs, allowed: `at most ${String(Math.floor(MOST_DRAWS / question.tasks.length))} for so many tasks`, params: { max: Math.floor(MOST_DRAWS / question.tasks.length) } });
    return ok(simulateHours(question));
  },
});

/** Refuses points that do not rise. */
export function orderIssues({ low, likely, high }: Pick<HoursTask, 'low' | 'likely' | 'high'>, index: number): readonly Issue[] {
  const path = `tasks[${String(index)}]`;
  if (likely < low) return [{ code: 'order', path: `${path}.likely`, given: likely, allowed: `${String(low)} or more, the low hours`, params: { reason: 'hours', min: low } }];
  if (high < likely) return [{ code: 'order', path: `${path}.high`, given: high, allowed: `${String(likely)} or more, the likely hours`, params: { reason: 'hours', min: likely } }];
  return [];
}
