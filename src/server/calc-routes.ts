import { type AnyOperation, calculate, describeOperation } from '#operation';
import { problemOf } from '#result';
import { createSay } from '#text';
import type { Hono } from 'hono';
import { readCalcInput, runInThread } from './calc-input.ts';
import { Refusal, answerProblem } from './failure.ts';
import { localeOf, sayKeyOf } from './locale.ts';

/**
 * Calculations over HTTP, with the meaning they have on the command line: one case is answered or refused,
 * an array is answered in order with a refused case as `{ problem }` among the others. An array without a case is refused.
 */
export function mountCalculations(app: Hono, operations: readonly AnyOperation[]): void {
  const byName = new Map(operations.map((operation) => [operation.name, operation]));
  app.get('/api/calc', (context) => {
    const say = sayKeyOf(createSay(localeOf(context)));
    return context.json({ operations: operations.map((operation) => describeOperation(operation, say)) });
  });
  app.post('/api/calc/:name', async (context) => {
    const name = context.req.param('name');
    const operation = byName.get(name);
    if (operation === undefined) throw new Refusal('notFound', [], `There is no operation ${JSON.stringify(name)}; the list stands at /api/calc`);
    const { answer, issues } = await calculate(operation, await readCalcInput(context, operation), runInThread(operation));
    context.header('cache-control', 'no-store');
    if (issues.length > 0 && !Array.isArray(answer)) return answerProblem(problemOf('refused', issues));
    return context.json(answer as object);
  });
}
