import { operations } from '#catalogue';
import { type AnyOperation, describeOperation } from '#operation';
import type { BenchStore } from '#store';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createApp } from './app.ts';
import { httpExampleOf } from './testing/http-example.ts';

const failures: unknown[] = [];
const app = createApp({ store: new Promise<BenchStore>(() => undefined), version: '0', operations, onFailure: (error) => failures.push(error) });
const calc = async (name: string, input: unknown) => {
  const response = await app.request(`/api/calc/${name}`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(input) });
  return { status: response.status, body: (await response.json()) as Record<string, unknown> };
};

/** The example with one of its leaves replaced by anything JSON can carry. */
const spoilt = (operation: AnyOperation, example: object = httpExampleOf(operation)) =>
  fc.tuple(fc.constantFrom(...Object.keys(example)), fc.oneof(fc.jsonValue(), fc.double(), fc.constantFrom(-1, 0, 5e-324, 1e308, -1e308, [], {}, '', null))).map(([field, value]) => ({ ...example, [field]: value }));

describe('calculations over HTTP', () => {
  it('answers the common example', async () => {
    // common practice, no source: 49 down and 26 up are 37.5 balance and 11.5 friction
    expect((await calc('touch-weight', { downWeightG: 49, upWeightG: 26 })).body).toMatchObject({ balanceWeightG: 37.5, frictionG: 11.5 });
  });

  it('answers an array in order with a refused case among the others', async () => {
    const { status, body } = await calc('touch-weight', [{ downWeightG: 49, upWeightG: 26 }, { downWeightG: 'heavy', upWeightG: 26 }, { downWeightG: 50, upWeightG: 20 }]);
    expect(status).toBe(200);
    expect(body).toMatchObject([{ frictionG: 11.5 }, { problem: { status: 422, errors: [{ path: 'downWeightG', given: 'heavy' }] } }, { frictionG: 15 }]);
  });

  it.each([
    ['a name given twice', '{"downWeightG":49,"upWeightG":26,"downWeightG":50}', 400, { path: 'downWeightG', given: 'downWeightG', code: 'duplicate' }],
    ['a list without a case', '[]', 422, { path: '', given: '[]', code: 'length' }],
  ])('refuses %s', async (_, body, status, issue) => {
    const response = await app.request('/api/calc/touch-weight', { method: 'POST', headers: { 'content-type': 'application/json' }, body });
    expect(response.status).toBe(status);
    expect(await response.json()).toMatchObject({ errors: [issue] });
  });

  it('refuses by name every list of a calculation that may not be empty', async () => {
    const mayNot = (operation: AnyOperation, field: string): boolean => (describeOperation(operation, String).inputSchema as { properties?: Record<string, { minItems?: number }> }).properties?.[field]?.minItems !== undefined;
    const lists = operations.flatMap((operation) => Object.entries(operation.example as object).flatMap(([field, value]) => (Array.isArray(value) && mayNot(operation, field) ? [[operation.name, field, { ...(operation.example as object), [field]: [] }] as const] : [])));
    expect(lists.length).toBeGreaterThan(1);
    for (const [name, field, input] of lists) {
      const { status, body } = await calc(name, input);
      expect([name, status, (body['errors'] as { path: string }[])[0]?.path]).toEqual([name, 422, field]);
    }
  });

  it('refuses 1e999, which JSON text can say and no number is', async () => {
    const response = await app.request('/api/calc/touch-weight', { method: 'POST', headers: { 'content-type': 'application/json' }, body: '{"downWeightG":1e999,"upWeightG":26}' });
    expect(response.status).toBe(422);
    expect(await response.json()).toMatchObject({ errors: [{ path: 'downWeightG', given: 'Infinity', code: 'type' }] });
  });

  it.each(operations.map((operation) => [operation.name, operation] as const))('%s answers or names the field, whatever it is given', async (name, operation) => {
    expect((await calc(name, httpExampleOf(operation))).status).toBe(200);
    const hold = async (input: unknown) => {
      const { status, body } = await calc(name, input);
      if (status === 200) return;
      expect(status, JSON.stringify(input)).toBe(422);
      expect(body['errors']).not.toHaveLength(0);
    };
    await fc.assert(fc.asyncProperty(spoilt(operation), hold), { numRuns: 60 });
    await fc.assert(fc.asyncProperty(fc.jsonValue().filter((value) => !Array.isArray(value)), hold), { numRuns: 30 });
    expect(failures).toEqual([]);
  });

  it('lists every calculation in both languages', async () => {
    for (const locale of ['en', 'de']) {
      const { operations: listed } = (await (await app.request(`/api/calc?locale=${locale}`)).json()) as { operations: { name: string; title: string }[] };
      expect(listed.map(({ name }) => name)).toEqual(operations.map(({ name }) => name));
      expect(listed.filter(({ title }) => title.startsWith('operation.'))).toEqual([]);
    }
  });
});
