import { z } from 'zod';
import type { AnyOperation } from './operation.ts';

/** What a script needs to know of an operation: JSON Schema 2020-12 of input and output, formula, sources, an example. */
export interface OperationDescription {
  readonly name: string;
  readonly title: string;
  readonly help: string;
  readonly formula: readonly string[];
  readonly sources: readonly string[];
  readonly example: unknown;
  readonly inputSchema: object;
  readonly outputSchema: object;
}

/** Describes an operation; `say` looks its title and help up in the message catalogue. */
export function describeOperation(operation: AnyOperation, say: (key: string) => string): OperationDescription {
  return {
    name: operation.name,
    title: say(`operation.${operation.name}.title`),
    help: say(`operation.${operation.name}.help`),
    formula: operation.formula,
    sources: operation.sources,
    example: operation.example,
    inputSchema: z.toJSONSchema(operation.input, { io: 'input', unrepresentable: 'throw' }),
    outputSchema: z.toJSONSchema(operation.output, { io: 'output', unrepresentable: 'throw' }),
  };
}
