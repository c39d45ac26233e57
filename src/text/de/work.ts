import type { work as english } from '../en/work.ts';

/** German: work. ICU MessageFormat. */
export const work: Readonly<Record<keyof typeof english, string>> = {
};
