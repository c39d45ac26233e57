import { type AnyOperation, type JsonSchema, SOUND_MEDIA_TYPE, soundFieldsOf } from '#operation';
import { type ProblemKind, problemKinds } from '#result';
import { PERSON_HEADER, type Route, routes } from '#workshop';
import { z } from 'zod';
import { FIELDS_PART } from './calc-input.ts';
import { type FileRoute, fileRoutes } from './file-routes.ts';
import { SchemaBook } from './json-schema.ts';

export interface DescribedApi {
  readonly operations: readonly AnyOperation[];
  readonly version: string;
  /** Says a key of the message catalogue. */
  readonly say: (key: string) => string;
}

/** The whole API as an OpenAPI 3.1 document, read off the routes and the operations: nothing in it is written by hand twice. */
export function openApiOf({ operations, version, say }: DescribedApi): JsonSchema {
  const book = new SchemaBook();
  book.components['Problem'] = problemSchema();
  const paths: Record<string, Record<string, JsonSchema>> = {};
  const add = (path: string, method: string, described: JsonSchema): void => {
    const open = path.replaceAll(/:(\w+)/gu, '{$1}');
    paths[open] = { ...paths[open], [method.toLowerCase()]: described };
  };
  for (const [name, route] of Object.entries<Route>(routes)) add(route.path, route.method, describeRoute(name, route, book, say));
  for (const [name, route] of Object.entries<FileRoute>(fileRoutes)) add(route.path, route.method ?? 'GET', describeFile(name, route, book, say));
  for (const operation of operations) add(`/api/calc/${operation.name}`, 'POST', describeCalculation(operation, book, say));
  return {
    openapi: '3.1.0',
    info: { title: say('shell.name'), version, description: say('route.api') },
    servers: [{ url: '/' }],
    paths,
    components: { schemas: book.components },
  };
}

function describeRoute(name: string, route: Route, book: SchemaBook, say: DescribedApi['say']): JsonSchema {
  return {
    operationId: name,
    tags: ['bench'],
    summary: say(`route.${name}`),
    parameters: [...parametersOf(route, book), ...(route.method === 'GET' ? [] : [{ name: PERSON_HEADER, in: 'header', required: false, description: say('route.person'), schema: { type: 'string', format: 'uuid' } }])],
    ...(route.body === undefined ? {} : { requestBody: { required: true, content: json(book.taken(route.body)) } }),
    responses: { 200: { description: say('route.answer'), content: json(book.answered(route.answer)) }, default: problemAnswer(say) },
  };
}

function describeFile(name: string, route: FileRoute, book: SchemaBook, say: DescribedApi['say']): JsonSchema {
  const content = Object.fromEntries(route.types.map((type) => [type, { schema: type === 'application/json' ? {} : { type: 'string', format: 'binary' } }]));
  return {
    operationId: name,
    tags: ['files'],
    summary: say(`route.${name}`),
    parameters: parametersOf(route, book),
    ...(route.takes === undefined ? {} : { requestBody: { required: true, content: Object.fromEntries(route.takes.map((type) => [type, { schema: { type: 'string', format: 'binary' } }])) } }),
    responses: { 200: { description: say('route.file'), content }, default: problemAnswer(say) },
  };
}

function describeCalculation(operation: AnyOperation, book: SchemaBook, say: DescribedApi['say']): JsonSchema {
  const { name, input, output, example, formula } = operation;
  const taken = book.taken(input);
  const answered = book.answered(output);
  const refused = { type: 'object', properties: { problem: { $ref: '#/components/schemas/Problem' } }, required: ['problem'] };
  return {
    operationId: `calc-${name}`,
    tags: ['calculations'],
    summary: say(`operation.${name}.title`),
    description: [say(`operation.${name}.help`), ...formula].join('\n\n'),
    requestBody: { required: true, content: { 'application/json': { schema: { anyOf: [taken, { type: 'array', items: taken }] }, example }, ...formOf(operation, taken) } },
    responses: {
      200: { description: say('route.answer'), content: json({ anyOf: [answered, { type: 'array', items: { anyOf: [answered, refused] } }] }) },
      default: problemAnswer(say),
    },
  };
}

/** A calculation that takes a recording takes a form too: a part for each recording, and one with the other fields as JSON. */
function formOf(operation: AnyOperation, taken: JsonSchema): JsonSchema {
  const names = soundFieldsOf(operation);
  if (names.length === 0) return {};
  const { properties = {}, required = [], ...rest } = taken as { readonly properties?: Readonly<Record<string, JsonSchema>>; readonly required?: readonly string[] };
  const fields = Object.fromEntries(Object.entries(properties).filter(([field]) => !names.includes(field)));
  const parts = Object.fromEntries(names.map((field) => [field, { type: 'string', contentMediaType: SOUND_MEDIA_TYPE }]));
  return {
    'multipart/form-data': {
      schema: { type: 'object', properties: { ...parts, [FIELDS_PART]: { ...rest, properties: fields, required: required.filter((field) => !names.includes(field)) } }, required: names.filter((field) => required.includes(field)) },
      encoding: { [FIELDS_PART]: { contentType: 'application/json' } },
    },
  };
}

function parametersOf({ path, query }: Pick<Route, 'path' | 'query'>, book: SchemaBook): readonly JsonSchema[] {
  const inPath = [...path.matchAll(/:(\w+)/gu)].map(([, name]) => ({ name, in: 'path', required: true, schema: { type: 'string' } }));
  if (query === undefined) return inPath;
  const { properties = {}, required = [] } = book.taken(query) as { properties?: Record<string, JsonSchema>; required?: readonly string[] };
  return [...inPath, ...Object.entries(properties).map(([name, schema]) => ({ name, in: 'query', required: required.includes(name), schema }))];
}

function json(schema: JsonSchema): JsonSchema {
  return { 'application/json': { schema } };
}

function problemAnswer(say: DescribedApi['say']): JsonSchema {
  return { description: say('route.problem'), content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } } };
}

/** Problem document after RFC 9457. */
function problemSchema(): JsonSchema {
  const entry = z.strictObject({
    path: z.string(),
    given: z.union([z.string(), z.number(), z.boolean(), z.null()]),
    allowed: z.string(),
    code: z.string(),
    params: z.record(z.string(), z.union([z.string(), z.number()])).optional(),
  });
  const kinds = Object.keys(problemKinds) as ProblemKind[];
  return new SchemaBook().taken(z.strictObject({
    type: z.string().describe(kinds.map((kind) => `/api/docs#problem-${kind}`).join(', ')),
    title: z.string(),
    status: z.number().int(),
    detail: z.string(),
    errors: z.array(entry),
  }));
}
