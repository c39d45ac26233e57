import { type Result, ok, refuse } from '#result';
import { repeatedNamesIn } from './repeated-names.ts';

/** Reads JSON text; where it is none, the issue names line and column, and a name that stands twice in an object is named. A byte order mark is no fault. */
export function readJson(text: string): Result<unknown> {
  const bare = text.replace(/^\uFEFF/u, '');
  try {
    const value = JSON.parse(bare) as unknown;
    const repeated = repeatedNamesIn(bare);
    return repeated.length > 0 ? refuse(...repeated) : ok(value);
  } catch {
    const at = faultOf(bare);
    const before = bare.slice(0, at).split('\n');
    const line = before.length;
    const column = (before.at(-1) ?? '').length + 1;
    return refuse({
      code: 'format',
      path: `line ${String(line)}, column ${String(column)}`,
      given: at >= bare.length ? 'the end of the input' : bare.slice(at, at + 20),
      allowed: 'JSON (RFC 8259)',
      params: { line, column, reason: 'json' },
    });
  }
}

const SPACE = /[ \t\n\r]*/uy;
const LITERAL = /true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/uy;
const STRING = /"(?:[^"\\\u0000-\u001F]|\\(?:["\\/bfnrt]|u[\dA-Fa-f]{4}))*"/uy;

/** Where JSON text goes wrong: the first character that cannot stand where it stands. */
function faultOf(text: string): number {
  let at = 0;
  const take = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    const found = pattern.exec(text) !== null;
    if (found) at = pattern.lastIndex;
    return found;
  };
  const open: string[] = [];
  let expected: 'value' | 'firstName' | 'name' | 'firstValue' | 'next' = 'value';
  for (;;) {
    take(SPACE);
    const sign = text[at] ?? '';
    if (expected === 'next') {
      const inside = open.at(-1);
      if (inside === undefined) return at;
      if (sign === ',') expected = inside === '}' ? 'name' : 'value';
      else if (sign === inside) open.pop();
      else return at;
      at += 1;
    } else if ((expected === 'firstName' || expected === 'firstValue') && sign === open.at(-1)) {
      open.pop();
      at += 1;
      expected = 'next';
    } else if (expected === 'name' || expected === 'firstName') {
      if (!take(STRING)) return at;
      take(SPACE);
      if (text[at] !== ':') return at;
      at += 1;
      expected = 'value';
    } else if (sign === '{' || sign === '[') {
      open.push(sign === '{' ? '}' : ']');
      at += 1;
      expected = sign === '{' ? 'firstName' : 'firstValue';
    } else {
      if (!take(STRING) && !take(LITERAL)) return at;
      expected = 'next';
    }
  }
}
