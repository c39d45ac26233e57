import { noneDrawnProbability } from '#numerics';
import { runOperation } from '#operation';
import { mustBe } from '#result';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boundOfBad, sampleSizeForMean, sampleSizeOperation, sampleSizeToDetect } from './index.ts';

const refusals = (raw: unknown): readonly string[] => {
  const result = runOperation(sampleSizeOperation, raw);
  return result.ok ? [] : result.issues.map(({ code, path }) => `${code} ${path}`);
};
const keysAndPart = fc.integer({ min: 1, max: 88 }).chain((keys) => fc.tuple(fc.constant(keys), fc.integer({ min: 1, max: keys })));
const confidence = fc.constantFrom(0.5, 0.8, 0.9, 0.95, 0.99, 1);

describe('a sample that finds a bad key', () => {
  it('is the smallest that does, by trying all', () => {
    fc.assert(fc.property(keysAndPart, confidence, ([keys, bad], sure) => {
      const finds = (drawn: number): boolean => 1 - noneDrawnProbability({ population: keys, marked: bad, drawn }) >= sure - 1e-12;
      const smallest = Array.from({ length: keys }, (_, index) => index + 1).find(finds);
      const found = sampleSizeToDetect({ keys, bad, confidence: sure });
      expect(found.sampleSize).toBe(smallest);
      expect(found.missProbability).toBe(noneDrawnProbability({ population: keys, marked: bad, drawn: found.sampleSize }));
    }));
  });

  it('does not ask for a key more because 1 − 0.9 is not a tenth in binary', () => {
    expect(sampleSizeToDetect({ keys: 20, bad: 1, confidence: 0.9 }).sampleSize).toBe(18);
    expect(sampleSizeToDetect({ keys: 20, bad: 1, confidence: 0.95 }).sampleSize).toBe(19);
  });
});

describe('a clean sample', () => {
  it('leaves the most bad keys that it does not rule out, by trying all', () => {
    fc.assert(fc.property(keysAndPart, confidence, ([keys, sampled], sure) => {
      const open = Array.from({ length: keys + 1 }, (_, bad) => bad).filter((bad) => 1 - noneDrawnProbability({ population: keys, marked: bad, drawn: sampled }) < sure - 1e-12);
      expect(boundOfBad({ keys, sampled, confidence: sure }).maxBad).toBe(open.at(-1) ?? 0);
    }));
  });

  it('of every key leaves none, of no key leaves all', () => {
    expect(boundOfBad({ keys: 88, sampled: 88, confidence: 1 }).maxBad).toBe(0);
    expect(boundOfBad({ keys: 88, sampled: 0, confidence: 0.95 }).maxBad).toBe(88);
  });
});

describe('a sample for a mean', () => {
  it('tends to the plain formula among very many keys and never exceeds the keys', () => {
    const plain = Math.ceil(((1.96 * 2.5) / 0.5) ** 2);
    expect(sampleSizeForMean({ sd: 2.5, halfWidth: 0.5, keys: 100_000_000 })).toBe(plain);
    expect(sampleSizeForMean({ sd: 1e9, halfWidth: 1e-6, keys: 88 })).toBe(88);
    expect(sampleSizeForMean({ sd: 0, halfWidth: 1, keys: 88 })).toBe(1);
  });

  it('gives a mean as close as was asked, corrected for a finite keyboard', () => {
    fc.assert(fc.property(fc.double({ min: 0.5, max: 10, noNaN: true }), fc.double({ min: 0.2, max: 5, noNaN: true }), fc.integer({ min: 2, max: 200 }), (sd, halfWidth, keys) => {
      const half = (n: number): number => 1.96 * sd * Math.sqrt((keys - n) / (keys - 1) / n);
      const n = sampleSizeForMean({ sd, halfWidth, keys });
      expect(half(n)).toBeLessThanOrEqual(halfWidth * (1 + 1e-9));
      if (n > 1) expect(half(n - 1)).toBeGreaterThan(halfWidth * (1 - 1e-9));
    }));
  });
});

describe('by name', () => {
  it('answers each kind', () => {
    const answer = (raw: unknown) => mustBe(runOperation(sampleSizeOperation, raw));
    expect(answer({ kind: 'mean', sd: 2.5, halfWidth: 1, keys: 88 })).toEqual({ sampleSize: 20 });
    expect(answer({ kind: 'detect', bad: 1, confidence: 0.95, keys: 88 })).toEqual({ sampleSize: 84, missProbability: 4 / 88 });
    expect(answer({ kind: 'bound', sampled: 15, confidence: 0.95, keys: 88 })).toMatchObject({ sampleSize: 15, maxBad: 14 });
  });

  it.each([
    [{ kind: 'guess', keys: 88 }, ['choice kind']],
    [{ keys: 88 }, ['required kind']],
    [{ kind: 'detect', bad: 89, confidence: 0.95, keys: 88 }, ['range bad']],
    [{ kind: 'bound', sampled: 89, confidence: 0.95, keys: 88 }, ['range sampled']],
    [{ kind: 'detect', bad: 1, confidence: 95, keys: 88 }, ['range confidence']],
    [{ kind: 'detect', bad: 1.5, confidence: 0.95, keys: 88 }, ['type bad']],
    [{ kind: 'mean', sd: 2, halfWidth: 0, keys: 88 }, ['range halfWidth']],
  ])('refuses %j', (raw, expected) => {
    expect(refusals(raw)).toEqual(expected);
  });
});
