import { refused } from './failure.ts';

/** Refuses an option that stands twice where one figure is asked; `lists` are those that may. None of two is dropped in silence. */
export function refuseRepeated(given: object, lists: readonly string[]): void {
  const repeated = Object.entries(given).filter(([name, value]) => Array.isArray(value) && name !== '_' && !lists.includes(name) && !/[A-Z]/u.test(name));
  if (repeated.length > 0) throw refused(repeated.map(([name, value]) => ({ code: 'duplicate', path: `--${name}`, given: (value as readonly unknown[]).map(String).join(', '), allowed: 'the option once' })));
}
