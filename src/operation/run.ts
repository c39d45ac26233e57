import { type Issue, type Problem, type Result, andThen, problemOf, under } from '#result';
import { checkInput } from './check.ts';
import type { AnyOperation, Operation } from './operation.ts';
import { type ReadSound, fillSounds, soundFieldsOf } from './sound.ts';

/** Checks raw input against the schema, runs, and holds the answer to be finite: NaN never leaves an operation. */
export function runOperation<I, O>(operation: Operation<I, O>, raw: unknown): Result<O> {
  const result = andThen(checkInput(operation.input, raw), (input) => operation.run(input));
  if (result.ok) refuseNaN(operation.name, result.value);
  return result;
}

/** What a script is answered: the result of one case, or of each case in order, a refused one as `{ problem }`. */
export interface Calculation {
  readonly answer: unknown;
  /** Every issue of every case; those of an array under `[3].downWeightG`. An array without a case is refused as a whole. */
  readonly issues: readonly Issue[];
}

/**
 * Runs one case, or each case of an array: a refused case spoils none of the others.
 * Those with a recording are run by `runCase`, one at a time, so that a long list holds one in memory.
 */
export async function calculate(operation: AnyOperation, raw: unknown, runCase: RunCase): Promise<Calculation> {
  if (!Array.isArray(raw)) {
    const [result] = await runCases(operation, [raw], runCase);
    return result.ok ? { answer: result.value, issues: [] } : { answer: refusedCase(result.issues), issues: result.issues };
  }
  if (raw.length === 0) {
    const issues: readonly Issue[] = [{ code: 'length', path: '', given: raw, allowed: `one case of ${operation.name}, or a list of at least 1`, params: { reason: 'noCase', operation: operation.name, min: 1 } }];
    return { answer: refusedCase(issues), issues };
  }
  const results = await runCases(operation, raw, runCase);
  return {
    answer: results.map((result): unknown => (result.ok ? result.value : refusedCase(result.issues))),
    issues: results.flatMap((result, index) => (result.ok ? [] : under(`[${String(index)}]`, result.issues))),
  };
}

/** How a case that holds a recording is run: here, or in a thread of its own. */
export type RunCase = (raw: unknown) => Promise<Result<unknown>>;

/** Runs cases here, their recordings read by `read`. */
export function runHere(operation: AnyOperation, read: ReadSound): RunCase {
  return async (raw) => andThen(await fillSounds(operation, raw, read), (input) => runOperation<unknown, unknown>(operation, input));
}

async function runCases(operation: AnyOperation, cases: readonly unknown[], runCase: RunCase): Promise<readonly [Result<unknown>, ...Result<unknown>[]]> {
  const results: Result<unknown>[] = [];
  const takesSound = soundFieldsOf(operation).length > 0;
  for (const one of cases) results.push(takesSound ? await runCase(one) : runOperation<unknown, unknown>(operation, one));
  return results as [Result<unknown>, ...Result<unknown>[]];
}

function refusedCase(issues: readonly Issue[]): { readonly problem: Problem } {
  return { problem: problemOf('refused', issues) };
}

function refuseNaN(name: string, value: unknown, path = ''): void {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${name} answered ${String(value)} at ${path || 'its root'}`);
  if (typeof value !== 'object' || value === null) return;
  for (const [key, inner] of Object.entries(value)) refuseNaN(name, inner, `${path}/${key}`);
}
