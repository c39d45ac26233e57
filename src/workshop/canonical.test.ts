import canonicalizeModule from 'canonicalize';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalJson } from './canonical.ts';

/** The library is typed as a namespace and is a function. */
const canonicalize = canonicalizeModule as unknown as (value: unknown) => string;

describe('canonical JSON', () => {
  it('agrees with a canonicalising library on any JSON value', () => {
    fc.assert(fc.property(fc.jsonValue(), (value) => { expect(canonicalJson(value)).toBe(canonicalize(value)); }), { numRuns: 2000 });
  });

  it('agrees with it on any finite number', () => {
    fc.assert(fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => { expect(canonicalJson(value)).toBe(canonicalize(value)); }), { numRuns: 2000 });
  });

  it('reads back as what it was', () => {
    fc.assert(fc.property(fc.jsonValue(), (value) => { expect(JSON.parse(canonicalJson(value))).toEqual(JSON.parse(JSON.stringify(value))); }));
  });

  it('does not depend on the order fields were given in', () => {
    expect(canonicalJson({ b: 1, a: [{ d: null, c: true }] })).toBe('{"a":[{"c":true,"d":null}],"b":1}');
  });

  it('orders keys by UTF-16 code units: an emoji before a full-width letter', () => {
    expect(canonicalJson({ 'ｚ': 1, '🎹': 2, 'é': 3, 'z': 4 })).toBe('{"z":4,"é":3,"🎹":2,"ｚ":1}');
  });

  it('leaves undefined members out', () => {
    expect(canonicalJson({ a: undefined, b: 1 })).toBe('{"b":1}');
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, undefined, [undefined], '\ud83c', { '\udfb9': 1 }, 1n, () => 1])('has no text for %s', (value) => {
    expect(() => canonicalJson(value)).toThrow('no canonical JSON');
  });
});
