/**
 * The one text a JSON value has under RFC 8785: keys in the order of their UTF-16 code units, no white space,
 * numbers in their shortest form. Members that are `undefined` are left out, as in JSON.
 * Throws on what has no such form: numbers that are not finite, half characters, functions and the like.
 * @source RFC-8785, section 3.2
 */
export function canonicalJson(value: unknown): string {
  if (value === null || typeof value === 'boolean') return String(value);
  if (typeof value === 'number' && Number.isFinite(value)) return JSON.stringify(value);
  if (typeof value === 'string' && !/\p{Surrogate}/u.test(value)) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (typeof value === 'object') {
    const members = Object.entries(value).filter(([, inner]) => inner !== undefined);
    members.sort(([a], [b]) => (a < b ? -1 : 1));
    return `{${members.map(([key, inner]) => `${canonicalJson(key)}:${canonicalJson(inner)}`).join(',')}}`;
  }
  throw new Error(`no canonical JSON for ${typeof value}${typeof value === 'number' ? ` ${String(value)}` : ''}`);
}
