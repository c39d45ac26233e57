import { operations } from '#catalogue';
import { languages } from '#text';
import { routes } from '#workshop';
import { Validator } from '@seriousme/openapi-schema-validator';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fileRoutes } from './file-routes.ts';
import { httpExampleOf } from './testing/http-example.ts';
import { type OpenBench, openBench } from './testing/open-bench.ts';

interface Described {
  readonly paths: Readonly<Record<string, Readonly<Record<string, { readonly responses: { readonly 200: { readonly content: Readonly<Record<string, { readonly schema: object }>> } }; readonly requestBody?: { readonly content: { readonly 'application/json': { readonly schema: object } } } }>>>>;
  readonly components: object;
}

let bench: OpenBench;
let api: Described;
beforeAll(async () => {
  bench = await openBench();
  api = (await (await bench.send('GET', '/api/openapi.json')).json()) as Described;
});
afterAll(() => bench.close());

const open = (path: string): string => path.replaceAll(/:(\w+)/gu, '{$1}');

/** Checks by the published description alone, as a stranger's client would. */
function holdsTo(schema: object | undefined, value: unknown): readonly unknown[] {
  const ajv = new Ajv2020({ strict: false, allErrors: true });
  addFormats.default(ajv);
  const validate = ajv.compile({ ...schema, components: api.components });
  return validate(value) ? [] : (validate.errors ?? []);
}

const answerSchema = (path: string, method: string) => api.paths[path]?.[method]?.responses[200].content['application/json']?.schema;
const bodySchema = (path: string, method: string) => api.paths[path]?.[method]?.requestBody?.content['application/json'].schema;

describe('the description of the API', () => {
  it('is a valid OpenAPI 3.1 document', async () => {
    const result = await new Validator().validate(structuredClone(api) as object as Record<string, unknown>);
    expect(result.errors ?? []).toEqual([]);
    expect(result.valid).toBe(true);
  });

  it('describes every route, every file and every calculation, each in words', () => {
    const described = Object.entries(api.paths).flatMap(([path, methods]) => Object.keys(methods).map((method) => `${method} ${path}`));
    const mounted = [
      ...Object.values(routes).map(({ method, path }) => `${method.toLowerCase()} ${open(path)}`),
      ...Object.values(fileRoutes).map(({ path, ...route }) => `${'method' in route ? 'post' : 'get'} ${open(path)}`),
      ...operations.map(({ name }) => `post /api/calc/${name}`),
    ];
    expect(described.sort()).toEqual(mounted.sort());
    expect(JSON.stringify(api)).not.toMatch(/"(?:route|operation|shell)\.[\w.-]+"/u);
  });

  it('is what the server answers', async () => {
    const send = async (method: string, path: string, described: string, body?: unknown) => {
      if (body !== undefined) expect(holdsTo(bodySchema(described, method.toLowerCase()), body)).toEqual([]);
      const answer = (await (await bench.send(method, path, body)).json()) as Record<string, unknown>;
      expect(holdsTo(answerSchema(described, method.toLowerCase()), answer), described).toEqual([]);
      return answer;
    };
    const { id } = await send('POST', '/api/pianos', '/api/pianos', { name: 'Described', kind: 'grand' });
    const at = `/api/pianos/${String(id)}`;
    await send('POST', `${at}/sessions`, '/api/pianos/{id}/sessions', { cycle: 1, state: 'found', stepG: 1 });
    await send('POST', `${at}/readings`, '/api/pianos/{id}/readings', { cycle: 1, state: 'found', entries: [{ quantity: 'downWeightG', scope: 'key', index: 3, typed: '49' }] });
    await send('PATCH', at, '/api/pianos/{id}', { year: 1920 });
    for (const rest of ['', '/readings', '/events', '/audit']) await send('GET', at + rest, `/api/pianos/{id}${rest}`);
    await send('GET', '/api/pianos', '/api/pianos');
    await send('GET', '/api/health', '/api/health');
    for (const operation of operations) {
      const { name } = operation;
      const example = httpExampleOf(operation);
      await send('POST', `/api/calc/${name}`, `/api/calc/${name}`, example);
      const mixed = (await (await bench.send('POST', `/api/calc/${name}`, [example, { nothing: 1 }])).json()) as unknown;
      expect(holdsTo(answerSchema(`/api/calc/${name}`, 'post'), mixed), name).toEqual([]);
    }
  });

  it('refuses in its schemas what the server refuses', () => {
    expect(holdsTo(bodySchema('/api/pianos', 'post'), { name: 'A', kind: 'organ' })).not.toEqual([]);
    expect(holdsTo(bodySchema('/api/calc/touch-weight', 'post'), { downWeightG: 'heavy', upWeightG: 26 })).not.toEqual([]);
  });

  it('holds days to the calendar', () => {
    const session = bodySchema('/api/pianos/{id}/sessions', 'post');
    const weighed = (weighedOn: string) => holdsTo(session, { cycle: 1, state: 'found', weighedOn });
    expect(weighed('2026-02-28')).toEqual([]);
    expect(weighed('2026-02-30')).not.toEqual([]);
  });

  it('is a page to read, in every language, without a word missing', async () => {
    for (const locale of languages) {
      const page = await (await bench.send('GET', `/api/docs?locale=${locale}`)).text();
      expect(page).toContain(`<html lang="${locale}">`);
      expect(page.match(/>\s*(?:route|operation)\.[\w.-]+\s*</gu) ?? []).toEqual([]);
      for (const { name } of operations) expect(page).toContain(`id="calc-${name}"`);
    }
  });
});
