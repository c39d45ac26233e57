import { ok } from '#result';
import { grams } from '#units';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { calculate, defineOperation, field, runOperation } from './index.ts';

const halve = defineOperation({
  name: 'halve',
  input: z.strictObject({ weightG: field.grams({ min: 0, max: 500 }), notes: z.array(z.strictObject({ ratio: field.ratio() })).min(1).optional(), kind: z.enum(['a', 'b']).optional() }),
  output: z.strictObject({ halfG: field.grams() }),
  formula: ['h = w / 2'],
  sources: [],
  example: { weightG: 10 },
  run: ({ weightG }) => ok({ halfG: (weightG === 499 ? Number.NaN : weightG / 2) as typeof weightG }),
});

const refused = (raw: unknown) => {
  const result = runOperation(halve, raw);
  return result.ok ? 'accepted' : result.issues.map(({ code, path, allowed }) => `${code} ${path}: ${allowed}`);
};

describe('running an operation', () => {
  it('answers with the full value', () => {
    expect(runOperation(halve, { weightG: 5 })).toEqual(ok({ halfG: 2.5 }));
  });

  it.each([
    [{}, ['required weightG: a finite number']],
    [{ weightG: '5' }, ['type weightG: a finite number']],
    [{ weightG: Number.NaN }, ['type weightG: a finite number']],
    [{ weightG: Infinity }, ['type weightG: a finite number']],
    [JSON.parse('{"weightG":1e999}'), ['type weightG: a finite number']],
    [{ weightG: -1 }, ['range weightG: at least 0']],
    [{ weightG: 1, notes: [] }, ['length notes: at least 1 entries']],
    [{ weightG: 1, notes: [{ ratio: 1 }, { ratio: null }] }, ['type notes[1].ratio: a finite number']],
    [{ weightG: 1, kind: 'c' }, ['choice kind: one of a, b']],
    [{ weightG: 1, wieghtG: 2 }, ['unknown wieghtG: no such field']],
    [[], ['type : a value of kind object']],
  ])('refuses %j by naming the field', (raw, expected) => {
    expect(refused(raw)).toEqual(expected);
  });

  const either = defineOperation({
    ...halve,
    input: z.union([
      z.strictObject({ weightG: field.grams(), keyRatio: field.ratio(), armMm: field.millimetres() }),
      z.strictObject({ notes: z.array(z.strictObject({ weightG: field.grams() })).min(1) }),
    ]),
    run: () => ok({ halfG: grams(0) }),
  });

  it.each([
    [{ weightG: 1 }, ['required keyRatio: a finite number', 'required armMm: a finite number']],
    [{ weightG: 1, keyRatio: 1, armmm: 1 }, ['required armMm: a finite number', 'unknown armmm: no such field']],
    [{ notes: [{}] }, ['required notes[0].weightG: a finite number']],
  ])('of several shapes lets the one that fits best speak about %j', (raw, expected) => {
    const result = runOperation(either, raw);
    expect(result.ok ? 'accepted' : result.issues.map(({ code, path, allowed }) => `${code} ${path}: ${allowed}`)).toEqual(expected);
  });

  const oneOrMany = defineOperation({
    ...halve,
    input: z.strictObject({ weightG: z.union([field.grams({ min: 0 }), z.array(z.array(field.grams({ min: 0 })))]) }),
    run: () => ok({ halfG: grams(0) }),
  });

  it.each([
    [{ weightG: -1 }, ['range weightG: at least 0']],
    [{ weightG: [[1, -1]] }, ['range weightG[0][1]: at least 0']],
    [{ weightG: [['1', -1]] }, ['type weightG[0][0]: a finite number', 'range weightG[0][1]: at least 0']],
    [{ weightG: '1' }, ['type weightG: a finite number']],
  ])('of a number or a list lets the kind that was given speak about %j', (raw, expected) => {
    const result = runOperation(oneOrMany, raw);
    expect(result.ok ? 'accepted' : result.issues.map(({ code, path, allowed }) => `${code} ${path}: ${allowed}`)).toEqual(expected);
  });

  it('treats NaN in an answer as a broken invariant', () => {
    expect(() => runOperation(halve, { weightG: 499 })).toThrow(/halfG/u);
  });
});

describe('calculating for a script', () => {
  it('answers an array in order, a refused case as a problem among the others', () => {
    const { answer, issues } = calculate(halve, [{ weightG: 5 }, { weightG: '5' }, { weightG: 7 }]);
    expect(answer).toMatchObject([{ halfG: 2.5 }, { problem: { status: 422, errors: [{ path: 'weightG', given: '5', allowed: 'a finite number', code: 'type' }] } }, { halfG: 3.5 }]);
    expect(issues.map(({ path }) => path)).toEqual(['[1].weightG']);
  });

  it('says infinity in a problem as text, since JSON has no such number', () => {
    expect(calculate(halve, JSON.parse('{"weightG":1e999}')).answer).toMatchObject({ problem: { errors: [{ given: 'Infinity' }] } });
  });
});
