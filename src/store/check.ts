import { checkInput } from '#operation';
import type { Issue, Result } from '#result';
import type { z } from 'zod';
import { StoreFailure } from './bench-store.ts';

/** The value of a result. @throws StoreFailure with the issues when it was refused. */
export function accepted<T>(result: Result<T>, message: string): T {
  if (result.ok) return result.value;
  throw new StoreFailure('refused', message, result.issues);
}

/** What was given, checked and with its defaults filled in. @throws StoreFailure when it does not fit. */
export function fitting<T>(schema: z.ZodType<T>, given: unknown, message: string): T {
  const issues = unkeepable(given, '');
  if (issues.length > 0) throw new StoreFailure('refused', message, issues);
  return accepted(checkInput(schema, given), message);
}

/** What a change states: fields given as `undefined` are left as they are. */
export function stated(change: object): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(change as Record<string, unknown>).filter(([, value]) => value !== undefined));
}

/** Text the database could not give back as it was typed: the null character, and half characters. */
function unkeepable(given: unknown, path: string): readonly Issue[] {
  if (typeof given === 'string') {
    return /[\0\p{Surrogate}]/u.test(given) ? [{ code: 'format', path, given, allowed: 'text without the null character and without half characters' }] : [];
  }
  if (typeof given !== 'object' || given === null) return [];
  return Object.entries(given).flatMap(([key, inner]) => unkeepable(inner, Array.isArray(given) ? `${path}[${key}]` : path === '' ? key : `${path}.${key}`));
}
