import type { quantities as english } from '../en/quantities.ts';

/** German: quantities. ICU MessageFormat. */
export const quantities: Readonly<Record<keyof typeof english, string>> = {
};
