import type { pianos as english } from '../en/pianos.ts';

/** German: pianos. ICU MessageFormat. */
export const pianos: Readonly<Record<keyof typeof english, string>> = {
};
