import { ok, refuse } from '#result';
import { grams } from '#units';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { type AnyOperation, calculate as calculateWith, defineOperation, describeOperation, field, fieldRowsOf, type JsonSchema, type RunCase, runHere, runnableExample, runOperation } from './index.ts';

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

const noSound: RunCase = () => Promise.reject(new Error('there is no sound here'));
const calculate = (operation: AnyOperation, raw: unknown) => calculateWith(operation, raw, noSound);

describe('calculating for a script', () => {
  it('answers an array in order, a refused case as a problem among the others', async () => {
    const { answer, issues } = await calculate(halve, [{ weightG: 5 }, { weightG: '5' }, { weightG: 7 }]);
    expect(answer).toMatchObject([{ halfG: 2.5 }, { problem: { status: 422, errors: [{ path: 'weightG', given: '5', allowed: 'a finite number', code: 'type' }] } }, { halfG: 3.5 }]);
    expect(issues.map(({ path }) => path)).toEqual(['[1].weightG']);
  });

  it('says infinity in a problem as text, since JSON has no such number', async () => {
    expect((await calculate(halve, JSON.parse('{"weightG":1e999}'))).answer).toMatchObject({ problem: { errors: [{ given: 'Infinity' }] } });
  });
});

describe('an operation that takes a recording', () => {
  const loudest = defineOperation({
    name: 'loudest',
    input: z.strictObject({ file: field.sound('One note.'), weightG: field.grams({ min: 0, max: 9 }).optional() }),
    output: z.strictObject({ value: field.number() }),
    formula: ['max |x|'],
    sources: [],
    example: { file: 'note.wav' },
    exampleSound: () => ({ sampleRateHz: 8000, channels: [Float64Array.of(0, 0.5, -0.75)] }),
    run: ({ file }) => ok({ value: Math.max(...file.channels.flatMap((channel) => [...channel].map(Math.abs))) }),
  });
  const read = (given: unknown) => Promise.resolve(given === 'good.wav' ? ok({ sampleRateHz: 8000, channels: [Float64Array.of(0.25)] }) : refuse({ code: 'range', path: 'sampleRateHz', given: 1, allowed: '8000 to 384000' }));

  it('is given samples, whatever the door was given', async () => {
    expect((await calculateWith(loudest, { file: 'good.wav' }, runHere(loudest, read))).answer).toEqual({ value: 0.25 });
    expect(runOperation(loudest, runnableExample(loudest))).toEqual(ok({ value: 0.75 }));
  });

  it('names what is wrong with the recording and with the other fields in one breath, a refused case among the others', async () => {
    const { answer, issues } = await calculateWith(loudest, [{ file: 'good.wav' }, { file: 'bad.wav', weightG: -1 }, { weightG: 1 }], runHere(loudest, read));
    expect(answer).toMatchObject([{ value: 0.25 }, { problem: { status: 422 } }, { problem: { status: 422 } }]);
    expect(issues.map(({ code, path }) => [code, path])).toEqual([['range', '[1].file.sampleRateHz'], ['range', '[1].weightG'], ['required', '[2].file']]);
  });

  it('refuses what is no recording, and never prints one sample by sample', () => {
    const bare = runOperation(loudest, { file: 'note.wav' });
    expect(bare).toEqual(refuse({ code: 'type', path: 'file', given: 'note.wav', allowed: 'a recording', params: { kind: 'sound' } }));
    expect(JSON.stringify(runnableExample(loudest))).toBe('{"file":"a recording of 1 × 3 samples at 8000 Hz"}');
    for (const channels of [[], [new Float64Array(0)], [new Float64Array(2), new Float64Array(1)], [[1, 2]]]) expect(runOperation(loudest, { file: { sampleRateHz: 8000, channels } }).ok).toBe(false);
  });

  it('says in its schema that a recording belongs there', () => {
    const { inputSchema } = describeOperation(loudest, (key) => key);
    expect(inputSchema).toMatchObject({ properties: { file: { type: 'string', contentMediaType: 'audio/*' } }, required: ['file'] });
    expect(fieldRowsOf(inputSchema as JsonSchema)).toMatchObject([{ path: 'file', kind: 'recording', required: true }, { path: 'weightG' }]);
  });
});
