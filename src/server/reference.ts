import { type AnyOperation, type FieldRow, type JsonSchema, type OperationDescription, describeOperation, fieldRowsOf } from '#operation';
import { problemKinds } from '#result';
import type { Say } from '#text';
import { type Route, routes } from '#workshop';
import { type FileRoute, fileRoutes } from './file-routes.ts';

/** What the reference says of one calculation. */
export interface OperationReference extends Omit<OperationDescription, 'inputSchema' | 'outputSchema'> {
  readonly input: readonly FieldRow[];
  readonly output: readonly FieldRow[];
}

export interface RouteReference {
  readonly method: string;
  readonly path: string;
  readonly says: string;
}

/** The reference pages as data, written out as HTML and as Markdown. */
export interface Reference {
  readonly operations: readonly OperationReference[];
  readonly routes: readonly RouteReference[];
  readonly problems: readonly { readonly kind: string; readonly status: number; readonly title: string }[];
}

/** Gathers the reference from the operations, the routes and the kinds of problem. */
export function referenceOf(operations: readonly AnyOperation[], say: (key: string) => string): Reference {
  const mounted = Object.entries<Route>(routes).map(([name, { method, path }]) => ({ method, path, says: say(`route.${name}`) }));
  const files = Object.entries<FileRoute>(fileRoutes).map(([name, { method = 'GET', path }]) => ({ method, path, says: say(`route.${name}`) }));
  const described = [
    { method: 'GET', path: '/api/calc', says: say('route.calcList') },
    { method: 'POST', path: '/api/calc/:name', says: say('route.calc') },
    { method: 'GET', path: '/api/openapi.json', says: say('route.openApi') },
    { method: 'GET', path: '/api/docs', says: say('route.docs') },
  ];
  return {
    operations: operations.map((operation) => operationReference(operation, say)),
    routes: [...mounted, ...files, ...described],
    problems: Object.entries(problemKinds).map(([kind, { status, title }]) => ({ kind, status, title })),
  };
}

function operationReference(operation: AnyOperation, say: (key: string) => string): OperationReference {
  const { inputSchema, outputSchema, ...words } = describeOperation(operation, say);
  return { ...words, input: fieldRowsOf(inputSchema as JsonSchema), output: fieldRowsOf(outputSchema as JsonSchema) };
}

/** A table of fields as heads and cells: what is taken, or what is answered. */
export function fieldCells(rows: readonly FieldRow[], side: 'input' | 'output', say: Say): { readonly heads: readonly string[]; readonly cells: readonly (readonly string[])[] } {
  const heads = [say('route.field'), say('route.kind'), say('route.unit'), say('route.allowed'), say(side === 'input' ? 'route.fallback' : 'route.given'), say('route.meaning')];
  return { heads, cells: rows.map((row) => [row.path, kindWords(row, say), row.unit, row.allowed, needOf(row, side, say), row.help]) };
}

function kindWords({ kind, variant }: FieldRow, say: Say): string {
  return variant === undefined ? kind : `${kind} ${say('route.variant', { number: variant })}`;
}

function needOf({ required, fallback }: FieldRow, side: 'input' | 'output', say: Say): string {
  if (side === 'output') return say(required ? 'route.always' : 'route.sometimes');
  if (fallback !== undefined) return JSON.stringify(fallback);
  return say(required ? 'route.required' : 'route.optional');
}
