import type { Say } from '#text';

/** A key put together at run time; says the key's last part where the catalogue has no such message. */
export function sayMaybe(say: Say, key: string, values?: Readonly<Record<string, string | number>>): string {
  return say.knows(key) ? say(key, values) : (key.split('.').at(-1) ?? key);
}
