import type { operations as english } from '../en/operations.ts';

/** German: operations. ICU MessageFormat. */
export const operations: Readonly<Record<keyof typeof english, string>> = {
};
