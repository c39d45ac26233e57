import type { Say } from '#text';
import type { Context } from 'hono';

/** The language an answer is written in: `?locale=`, else the browser's first choice, else English. */
export function localeOf(context: Context): string {
  const asked = context.req.query('locale') ?? context.req.header('accept-language')?.split(',')[0]?.split(';')[0]?.trim() ?? '';
  try {
    return Intl.getCanonicalLocales(asked)[0] ?? 'en';
  } catch {
    return 'en';
  }
}

/** Says a key put together at run time; a key the catalogue lacks is said as itself, for the tests to find. */
export function sayKeyOf(say: Say): (key: string) => string {
  return (key) => (say.knows(key) ? say(key) : key);
}
