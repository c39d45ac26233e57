import type { Issue } from '#result';

/** Refuses a name that stands in its list before. */
export function duplicateIssues(list: string, field: string, names: readonly (string | number)[]): readonly Issue[] {
  return names.flatMap((name, place): readonly Issue[] => {
    const before = names.indexOf(name);
    return before === place ? [] : [{ code: 'duplicate', path: `${list}[${String(place)}].${field}`, given: name, allowed: `each once; ${list}[${String(before)}] is ${String(name)} already`, params: { first: before } }];
  });
}

/** Refuses a name that is not among those known. */
export function unknownIssues(path: string, given: string, known: readonly string[]): readonly Issue[] {
  if (known.includes(given)) return [];
  const choices = known.join(', ');
  return [{ code: 'choice', path, given, allowed: choices === '' ? 'none: there are none to name' : `one of ${choices}`, params: { choices } }];
}
