import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readJson } from './index.ts';

const faultIn = (text: string) => {
  const result = readJson(text);
  return result.ok ? 'read' : result.issues[0]?.path;
};

describe('reading JSON', () => {
  it.each([
    ['abc', 'line 1, column 1'],
    ['{"a":1,}', 'line 1, column 8'],
    ['{"a" 1}', 'line 1, column 6'],
    ['', 'line 1, column 1'],
    ['[1,\n2', 'line 2, column 2'],
    ['[1]\n[2]', 'line 2, column 1'],
    ['{"a":49,5}', 'line 1, column 9'],
    ['[1,,2]', 'line 1, column 4'],
    ['{"a":\n  NaN}', 'line 2, column 3'],
  ])('names the place where %j goes wrong', (text, place) => {
    expect(faultIn(text)).toBe(place);
  });

  it('takes a byte order mark', () => {
    expect(faultIn('\uFEFF{"a":1}')).toBe('read');
  });

  it.each([
    ['{"a":1,"a":2}', ['a']],
    ['[{"a":1},{"a":1,"b":{"a":1,"c":[{"d":"\\"d\\":1","d":2}]}}]', ['[1].b.c[0].d']],
    ['{"a":1,"\\u0061":2,"b":1,"b":[1,2]}', ['a', 'b']],
    ['{"a":{"b":1},"c":{"b":"a,{\\"a\\":"}}', []],
    ['{"a":"a","b":"a","":1,"":2}', ['']],
    ['{"__proto__":1,"__proto__":2}', ['__proto__']],
  ])('refuses a name that stands twice in one object, which a parser would drop in silence: %s', (text, names) => {
    const result = readJson(text);
    expect(result.ok ? [] : result.issues.map(({ code, path }) => [code, path])).toEqual(names.map((name) => ['duplicate', name]));
  });

  it('reads whatever JSON.stringify wrote, and says where it was cut off', () => {
    fc.assert(fc.property(fc.json(), fc.nat(), (text, cut) => {
      expect(readJson(text)).toEqual({ ok: true, value: JSON.parse(text) as unknown });
      expect(() => readJson(text.slice(0, cut % (text.length + 1)))).not.toThrow();
    }));
  });
});
