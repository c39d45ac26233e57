import { type AnyOperation, describeOperation, runOperation, runnableExample, soundFieldsOf } from '#operation';
import { sourceOf } from '#sources';
import { createSay, languages } from '#text';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { operationByName, operations } from './index.ts';

const { knows: isMessageKey } = createSay('en');

type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };
type Schema = { readonly properties?: Readonly<Record<string, Schema>>; readonly items?: Schema; readonly anyOf?: readonly Schema[]; readonly oneOf?: readonly Schema[]; readonly type?: unknown };

/** Numbers without a unit of their own, or whose unit is that of the row they speak of. */
const DIMENSIONLESS = new Set([
  'keyRatio', 'keyRatioUncertainty', 'wippenRatio', 'hammerRatio', 'actionRatio',
  'weightRatio', 'weightRatioUncertainty', 'weightRatioExpandedUncertainty', 'median', 'perNote',
  'shares.balanceWeight', 'shares.frontWeight', 'shares.hammerWeight', 'shares.wippenWeight', 'shares.keyRatio',
  'capstanFriction', 'rollerFriction', 'inertialShare', 'distanceRatio', 'speedRatio', 'leverRatio', 'meanRatio', 'capstanSliding', 'rollerSliding', 'positions', 'meeting', 'risesFromKey', 'repeats', 'confidence', 'missProbability', 'lambda', 'weights', 'capability', 'nodeLimit', 'maxLeads', 'ratioChange', 'fromRatio', 'toRatio', 'minutes', 'lowerBoundMinutes', 'partsMinor', 'already', 'planned', 'outOfReach',
  'count', 'quantity', 'measured', 'inside', 'insideGuarded', 'largestStepIndex', 'outliers', 'keys', 'bad', 'sampled', 'sampleSize', 'maxBad',
  'strings', 'station', 'stations', 'pushedStation', 'readStation', 'asymmetryStations', 'uncheckedPairs', 'notes', 'index',
  'values', 'target', 'tolerance', 'step', 'uncertainty', 'largestStep', 'medianStep', 'smoothed', 'sd', 'halfWidth',
  'inharmonicityB', 'exactInharmonicityB', 'coreOnlyInharmonicityB', 'firstOrderInharmonicityB', 'strain', 'packing', 'partials', 'fitPartials',
  'key', 'strings', 'lockedCandidate', 'candidateIndex', 'objective', 'lowerBound',
  'strikeRatio', 'partsOfLength', 'hoursPerWeek', 'reshapeCount', 'mostReshapes', 'reshapesLeft',
  'lowerB', 'upperB', '2:1', '4:2', '6:3', 'beatsPerSecond', 'anchorKey', 'fromKey', 'toKey', 'lowerKey', 'upperKey', 'weight', 'smoothness', 'inharmonicityUncertainty',
  'passCount', 'missingPassCount', 'dropShare', 'dropShareUncertainty', 'dayCount', 'spanCount', 'missingSpanCount', 'nextVisitDayCount', 'earliestDayCount', 'latestDayCount',
  'dcOffset', 'clippedRuns',
  'firstMidi', 'lastMidi', 'dampingPerS', 'secondTermC', 'fittedPartials', 'summedPartials', 'degreesOfFreedom', 'methodVersion', 'stages', 'harmonicCentroid', 'harmonicCentroidUncertainty', 'tristimulus1', 'tristimulus2', 'tristimulus3', 'tristimulus3Uncertainty', 'slopeDbPerOctave', 'slopeUncertaintyDbPerOctave', 'slopePartials',
  'value', 'curve', 'offset', 'ratio', 'scatter', 'scatters', 'stepRms', 'brightness', 'brightnessUncertainty', 'brightnessBefore', 'brightnessAfter', 'brightnessChange', 'changeUncertainty', 'repeatability', 'beyond', 'bright', 'dull', 'medianRatio', 'decayRatio', 'n', 'found', 'needed', 'strikes', 'partials',
  'missingKeys', 'duplicateKeys', 'pieces', 'drilled', 'trimmed', 'plugged', 'exchanged',
  'low', 'likely', 'high', 'correlation', 'runs', 'seed', 'month', 'saleMonth', 'paybackMonth', 'signChanges', 'shares',
  'hours', 'seconds', 'lower', 'upper', 'bassRatio', 'absorption', 'coversMaterial', 'material', 'order', 'partial', 'directivity', 'yearMade', 'impulseCount', 'toldCount', 'nonlinearity', 'doubts', 'below', 'atLeast',
  'legs', 'intensity', 'lifeFrom', 'lifeTo', 'used', 'sinceDayCount', 'intercept', 'interceptHalfWidth', 'hourCount', 'fromHourCount', 'toHourCount',
  'tensionSmoothness', 'inharmonicitySmoothness', 'impedanceSmoothness', 'sizeChange', 'tensionDeviation',
]);
const ENDS_IN_UNIT = /(?:G|Mm|N|Deg|Hz|Ct|Cents|S|C|K|PerK|Pct|GMm|MPa|GPa|GPerM|KgM3|KgPerS|Nm2|GPerMm3|GMm2|Mm2|M2|M3|GPerM3|GPerCm3|KPa|dbPerKm|DbA|PerPct|Ms|MPerS2|Hours|hoursPlayed|Days|Kg|Years|Db|DbPerOctave|Acum|Minor|(?:mean|Mean|sd|Sd|p\d\d|expected|within|added)H)$/u;

/** Lists that may well hold nothing: a key without leads, no new holes, no set-ups, a way without work or parts. */
const MAY_BE_EMPTY = new Set(['work-cost.tasks', 'item-cost.items', 'leads', 'gridMm', 'diametersMm', 'existingHoles', 'keepOutsMm', 'amounts', 'setups', 'passes', 'standing']);

/** Every number of a schema, by the names on the way to it. */
function numbersOf(schema: Schema, path: readonly string[] = []): readonly string[] {
  const here = schema.type === 'number' || schema.type === 'integer' ? [path.join('.')] : [];
  return [
    ...here,
    ...Object.entries(schema.properties ?? {}).flatMap(([name, inner]) => numbersOf(inner, [...path, name])),
    ...(schema.items === undefined ? [] : numbersOf(schema.items, path)),
    ...[...(schema.anyOf ?? []), ...(schema.oneOf ?? [])].flatMap((inner) => numbersOf(inner, path)),
  ];
}

const described = (operation: AnyOperation) => describeOperation(operation, (key) => key);
const run = (operation: AnyOperation, raw: unknown) => runOperation(operation, heard(operation, raw));

/** What is given, with the recording the example names in its place wherever that name stands. */
function heard(operation: AnyOperation, raw: unknown): unknown {
  const names = soundFieldsOf(operation);
  if (names.length === 0 || typeof raw !== 'object' || raw === null) return raw;
  const [named, sounds] = [operation.example, runnable(operation)] as readonly Readonly<Record<string, unknown>>[];
  return Object.fromEntries(Object.entries(raw).map(([key, value]: [string, unknown]) => [key, names.includes(key) && value === named?.[key] ? sounds?.[key] : value]));
}

const madeUp = new Map<AnyOperation, unknown>();
function runnable(operation: AnyOperation): unknown {
  if (!madeUp.has(operation)) madeUp.set(operation, runnableExample(operation));
  return madeUp.get(operation);
}
const pathsRefused = (operation: AnyOperation, raw: unknown): readonly string[] => {
  const result = run(operation, raw);
  return result.ok ? [] : result.issues.map(({ path }) => path);
};

/** Places of all leaves of an example, with what stands there. */
function leavesOf(value: Json, path: readonly (string | number)[] = []): readonly { readonly path: readonly (string | number)[]; readonly value: Json }[] {
  if (Array.isArray(value)) return value.flatMap((inner: Json, index) => leavesOf(inner, [...path, index]));
  if (typeof value === 'object' && value !== null) return Object.entries(value).flatMap(([key, inner]) => leavesOf(inner, [...path, key]));
  return [{ path, value }];
}

function replaced(root: Json, [step, ...rest]: readonly (string | number)[], put: unknown): unknown {
  if (step === undefined) return put;
  const inner = (root as Readonly<Record<string | number, Json>>)[step] ?? null;
  const next = replaced(inner, rest, put);
  return Array.isArray(root) ? root.map((value: Json, index) => (index === step ? next : value)) : { ...(root as object), [step]: next };
}

const textOf = (path: readonly (string | number)[]): string =>
  path.reduce<string>((text, step) => (typeof step === 'number' ? `${text}[${String(step)}]` : text === '' ? step : `${text}.${step}`), '');

const listsOf = (value: Json, path: readonly (string | number)[] = []): readonly (readonly (string | number)[])[] => {
  if (typeof value !== 'object' || value === null) return [];
  const inner = Array.isArray(value) ? value.flatMap((each: Json, index) => listsOf(each, [...path, index])) : Object.entries(value).flatMap(([key, each]) => listsOf(each, [...path, key]));
  return Array.isArray(value) ? [path, ...inner] : inner;
};

describe('the list of operations', () => {
  it('has one of each name and finds it', () => {
    expect(new Set(operations.map(({ name }) => name)).size).toBe(operations.length);
    for (const operation of operations) expect(operationByName(operation.name)).toBe(operation);
    expect(operationByName('no-such')).toBeUndefined();
  });
});

describe.each(operations.map((operation) => [operation.name, operation] as const))('%s', (name, operation) => {
  const example = operation.example as Json;
  const numbers = leavesOf(example).filter(({ value }) => typeof value === 'number');

  it('runs its own example, and the answer fits its own schemas', () => {
    const result = run(operation, example);
    expect(result).toMatchObject({ ok: true });
    if (!result.ok) return;
    expect(operation.output.safeParse(result.value).error).toBeUndefined();
    const { inputSchema, outputSchema } = described(operation);
    const ajv = new Ajv2020({ strict: false });
    expect(ajv.validate(inputSchema, example), ajv.errorsText()).toBe(true);
    expect(ajv.validate(outputSchema, JSON.parse(JSON.stringify(result.value))), ajv.errorsText()).toBe(true);
  });

  it('has words in every language, a formula and known sources', () => {
    for (const part of ['title', 'help']) {
      const key = `operation.${name}.${part}`;
      expect(isMessageKey(key), key).toBe(true);
      if (isMessageKey(key)) for (const language of languages) expect(createSay(language)(key).length).toBeGreaterThan(5);
    }
    expect(operation.formula.length).toBeGreaterThan(0);
    expect(operation.sources.length).toBeGreaterThan(0);
    for (const source of operation.sources) expect(() => sourceOf(source)).not.toThrow();
  });

  it('names the unit of every number', () => {
    const { inputSchema, outputSchema } = described(operation);
    const unnamed = [...numbersOf(inputSchema), ...numbersOf(outputSchema)].filter((path) => {
      const last = path.split('.').at(-1) ?? '';
      return !ENDS_IN_UNIT.test(last) && !DIMENSIONLESS.has(last) && !DIMENSIONLESS.has(path);
    });
    expect(unnamed).toEqual([]);
  });

  it.each(numbers.map(({ path }) => [textOf(path), path] as const))('refuses what is no number at %s', (text, path) => {
    for (const wrong of ['7', true, {}, [], Number.NaN, Infinity, -Infinity, JSON.parse('1e999') as number]) {
      expect(pathsRefused(operation, replaced(example, path, wrong)), String(wrong)).toContain(text);
    }
    for (const extreme of [Number.MAX_VALUE, -Number.MAX_VALUE]) expect(pathsRefused(operation, replaced(example, path, extreme))).toContain(text);
  });

  it.each(numbers.map(({ path }) => [textOf(path), path] as const))('answers or refuses the smallest numbers there are at %s, and nought', (_, path) => {
    for (const tiny of [5e-324, -5e-324, 1e-300, 0]) {
      const result = run(operation, replaced(example, path, tiny));
      if (result.ok) expect(operation.output.safeParse(result.value).error, String(tiny)).toBeUndefined();
    }
  });

  it('refuses empty lists where it takes lists', () => {
    for (const path of listsOf(example).filter((list) => !MAY_BE_EMPTY.has(String(list.at(-1))) && !MAY_BE_EMPTY.has(`${operation.name}.${String(list.at(-1))}`))) expect(pathsRefused(operation, replaced(example, path, []))).toContain(textOf(path));
  });

  it('refuses fields it does not know, and what is no object', () => {
    expect(pathsRefused(operation, { ...(example as object), surprise: 1 })).toContain('surprise');
    for (const wrong of [null, [], 'text', 7, undefined]) expect(run(operation, wrong).ok).toBe(false);
  });

  it('names every field that is missing', () => {
    const required = Object.keys(example as object).filter((key) => {
      const { [key]: _, ...rest } = example as Record<string, Json>;
      return !run(operation, rest).ok;
    });
    for (const key of required) {
      const { [key]: _, ...rest } = example as Record<string, Json>;
      expect(pathsRefused(operation, rest).some((path) => path === key || path.startsWith(key))).toBe(true);
    }
  });

  it('refuses every negative weight but front weights', () => {
    for (const { path } of numbers.filter((leaf) => /G$/u.test(String(leaf.path.at(-1))))) {
      const mayBeNegative = ['frontWeightG', 'bareFrontWeightG', 'targetFrontWeightG', 'balanceWeightG', 'changeG', 'addedMassG', 'hammerChangeG', 'fromG', 'toG'].includes(String(path.at(-1)));
      if (!mayBeNegative) expect(pathsRefused(operation, replaced(example, path, -1))).toEqual([textOf(path)]);
    }
  });

  it('refuses an up weight above the down weight', () => {
    for (const { path } of numbers.filter((leaf) => leaf.path.at(-1) === 'upWeightG')) {
      const result = run(operation, replaced(example, path, 90));
      expect(result).toMatchObject({ ok: false, issues: [{ code: 'order', path: textOf(path), given: 90 }] });
    }
  });
});
