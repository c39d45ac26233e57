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
 * Recordings are read by `read` one case at a time, so that a long list holds one in memory.
 */
export async function calculate(operation: AnyOperation, raw: unknown, read: ReadSound): Promise<Calculation> {
  if (!Array.isArray(raw)) {
    const result = await runCase(operation, raw, read);
    return result.ok ? { answer: result.value, issues: [] } : { answer: refusedCase(result.issues), issues: result.issues };
  }
  if (raw.length === 0) {
    const issues: readonly Issue[] = [{ code: 'length', path: '', given: raw, allowed: `one case of ${operation.name}, or a list of at least 1`, params: { reason: 'noCase', operation: operation.name, min: 1 } }];
    return { answer: refusedCase(issues), issues };
  }
  const results = await runCases(operation, raw, read);
  return {
    answer: results.map((result): unknown => (result.ok ? result.value : refusedCase(result.issues))),
    issues: results.flatMap((result, index) => (result.ok ? [] : under(`[${String(index)}]`, result.issues))),
  };
}

async function runCase(operation: AnyOperation, raw: unknown, read: ReadSound): Promise<Result<unknown>> {
  return andThen(await fillSounds(operation, raw, read), (input) => runOperation<unknown, unknown>(operation, input));
}

async function runCases(operation: AnyOperation, cases: readonly unknown[], read: ReadSound): Promise<readonly Result<unknown>[]> {
  if (soundFieldsOf(operation).length === 0) return cases.map((one) => runOperation<unknown, unknown>(operation, one));
  const results: Result<unknown>[] = [];
  for (const one of cases) results.push(await runCase(operation, one, read));
  return results;
}

function refusedCase(issues: readonly Issue[]): { readonly problem: Problem } {
  return { problem: problemOf('refused', issues) };
}

function refuseNaN(name: string, value: unknown, path = ''): void {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${name} answered ${String(value)} at ${path || 'its root'}`);
  if (typeof value !== 'object' || value === null) return;
  for (const [key, inner] of Object.entries(value)) refuseNaN(name, inner, `${path}/${key}`);
}
