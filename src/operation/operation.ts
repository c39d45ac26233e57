import type { Samples } from '#numerics';
import type { Result } from '#result';
import type { z } from 'zod';

/**
 * One calculation, declared once. The command line, the HTTP route, the OpenAPI page, the reference
 * table and the panel that opens a figure are all read off this object.
 * Titles, help and field help stand in the message catalogue under `operation.<name>.*`.
 */
export interface Operation<Input = unknown, Output = unknown> {
  readonly name: string;
  readonly input: z.ZodType<Input>;
  readonly output: z.ZodType<Output>;
  /** The formula in the symbols of its source, one line each, for the panel that opens a figure. */
  readonly formula: readonly string[];
  /** Keys of `#sources`. */
  readonly sources: readonly string[];
  /** An input that runs, for docs, help and tests. */
  readonly example: unknown;
  /** Where the example names a recording: one like it, made up of nothing but numbers, so that the example runs anywhere. */
  readonly exampleSound?: () => Samples;
  /** Pure. Input has passed the schema; what the schema cannot say is refused here as issues. */
  readonly run: (input: Input) => Result<Output>;
}

/** Declares an operation; inference ties the schemas to `run`. */
export function defineOperation<Input, Output>(declaration: Operation<Input, Output>): Operation<Input, Output> {
  return declaration;
}

/** An operation whose types have been forgotten, as a list of many holds it. */
// eslint-disable-next-line @typescript-eslint/no-explicit-any -- input stands in a contravariant place; runOperation checks it by schema
export type AnyOperation = Operation<any, any>;
